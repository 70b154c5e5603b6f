/** The link of a survey day, as it stands on a poster. */

/** Stands before the code of a day in what a link brings to /start. */
export const dayPrefix = 'survey-';
