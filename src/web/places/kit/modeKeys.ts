/** The columns of the grid of camera modes, as they are written, in their order. */
export const MODE_KEYS = ['title', 'pixels', 'rate', 'binning', 'bits'] as const;
export type ModeKey = (typeof MODE_KEYS)[number];

export const MODE_TITLES: Readonly<Record<ModeKey, string>> = {
  title: 'Title',
  pixels: 'Pixels',
  rate: 'Highest rate',
  binning: 'Binning',
  bits: 'Bits',
};
