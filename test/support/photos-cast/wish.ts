/** What a cast photo may be asked to show. */
import type {GroundName} from './grounds.ts';

/** What a photo shall show; all that is not wished for is made up from the seed. */
export type Wish = {
	readonly seed: number;
	readonly reference: 'a4' | 'card' | 'sheet' | 'letter' | 'coin' | 'none';
	readonly level: 'clean' | 'normal' | 'hard';
	readonly subject?: 'case' | 'stone' | 'shell' | 'leaf' | 'weed' | 'nothing' | 'overlap' | 'tray' | 'cut';
	readonly cardScale?: number;
	readonly printScale?: number;
	readonly ground?: GroundName;
	readonly isCut?: boolean;
	readonly blurPx?: number;
	readonly isDark?: boolean;
	readonly isHornless?: boolean;
	readonly isTilted?: boolean;
	readonly isTiny?: boolean;
	/** A small picture where the whole look of it does not matter. */
	readonly longSidePx?: number;
};
