/** Pictures of the questions that all regions share, by what they show. */
export const aroundPictures = ['parts', 'photo', 'soak', 'aprons'] as const;

/** One of the pictures that all regions share. */
export type AroundPicture = (typeof aroundPictures)[number];
