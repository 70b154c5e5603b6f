/** Colours, line widths and sizes of every picture. Units are those of the drawing: a card is 720 wide. */

/**
 * Colours of a picture. Each card brings its own light ground, so that it reads alike in light and dark chats.
 * No meaning hangs on a colour alone: whatever is marked also has a shape, a hatching or a word.
 */
export const colours = {
	card: '#fbf6e9',
	ink: '#1c2730',
	/** Second words and thin lines; 6:1 on the card. */
	quiet: '#4b5761',
	capsule: '#cf9a55',
	/** Lines drawn on the capsule. */
	grain: '#6b4216',
	apron: '#f0dcb0',
	keel: '#8fb4d3',
	horn: '#b87a34',
	pale: '#f4ead2',
	/** What a picture points at. */
	mark: '#0f5a94',
	/** What is not to be done or does not count. */
	wrong: '#9c2217',
	/** What is lost: the outline of it stays. */
	faded: '#b9b1a0',
	white: '#ffffff',
	sea: '#cfe3ee',
	land: '#ece0c4',
} as const;

/** Widths of lines. */
export const lines = {hair: 1.5, thin: 3, plain: 5, bold: 8} as const;

/** Sizes of letters, from top to foot of a capital at 0.73 of each. */
export const letters = {
	/** The smallest: capitals are 11 px high when a card of 720 is shown 320 px wide. */
	small: 34,
	plain: 38,
	large: 46,
	/** The letter of an option. */
	option: 56,
} as const;

/** Sizes of the card on which a picture stands. */
export const card = {widthUnits: 720, margin: 24, corner: 28} as const;

/** Pixels across of a picture as it is sent: wide enough for a phone held across. */
export const sentWidthPx = 1080;

/** Relative luminance of a colour written `#rrggbb`, from 0 to 1 (WCAG 2.2, definition of relative luminance). */
export function luminance(hex: string): number {
	const channels = [1, 3, 5].map(from => Number.parseInt(hex.slice(from, from + 2), 16) / 255);
	const [red = 0, green = 0, blue = 0] = channels.map(value =>
		value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
	);
	return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast of two colours written `#rrggbb`, from 1 to 21 (WCAG 2.2, definition of contrast ratio). */
export function contrast(one: string, other: string): number {
	const [light, dark] = [luminance(one), luminance(other)].sort((a, b) => b - a);
	return ((light ?? 0) + 0.05) / ((dark ?? 0) + 0.05);
}
