/** What a shot asks for, in the order a crew thinks of it. Keys are those of the written shoot. */

export interface AskLine {
  readonly key: string;
  readonly label: string;
  /** Always on the page; others wait under "more" until something is written. */
  readonly isCore?: boolean;
}

export interface AskGroup {
  readonly id: 'time' | 'frame' | 'sharp' | 'light' | 'camera' | 'takes';
  readonly title: string;
  readonly lines: readonly AskLine[];
}

export const ASK_GROUPS: readonly AskGroup[] = [
  {
    id: 'time',
    title: 'Time',
    lines: [
      { key: 'screenTime', label: 'On screen', isCore: true },
      { key: 'action/duration', label: 'Action lasts', isCore: true },
      { key: 'action/speed', label: 'Fastest across', isCore: true },
      { key: 'handles', label: 'Handle, each end', isCore: true },
    ],
  },
  {
    id: 'frame',
    title: 'Frame',
    lines: [
      { key: 'frameWidth', label: 'Frame width', isCore: true },
      { key: 'action/width', label: 'Action reaches across' },
      { key: 'action/height', label: 'Action reaches up' },
      { key: 'action/towardsLens', label: 'Flies towards the lens' },
      { key: 'reframe', label: 'Held back to reframe' },
      { key: 'clearance', label: 'Clear of the lens', isCore: true },
    ],
  },
  {
    id: 'sharp',
    title: 'Sharpness',
    lines: [
      { key: 'depth', label: 'Sharp front to back', isCore: true },
      { key: 'blur', label: 'Blur at most', isCore: true },
      { key: 'unsharpness', label: 'Still called sharp', isCore: true },
      { key: 'diffraction', label: 'Diffraction at most' },
    ],
  },
  {
    id: 'light',
    title: 'Light',
    lines: [
      { key: 'readingStandsFor', label: 'Reading above grey' },
      { key: 'highlights', label: 'Room for highlights', isCore: true },
      { key: 'signalToNoise', label: 'Signal over noise', isCore: true },
      { key: 'azimuth', label: 'Camera turned' },
      { key: 'elevation', label: 'Camera looks down' },
      { key: 'hero/life', label: 'Product lasts' },
      { key: 'hero/lightOn', label: 'Light on, each take' },
    ],
  },
  {
    id: 'camera',
    title: 'Camera',
    lines: [
      { key: 'rate', label: 'Frame rate', isCore: true },
      { key: 'shutter', label: 'Shutter', isCore: true },
      { key: 'stop', label: 'Stop', isCore: true },
      { key: 'index', label: 'EI', isCore: true },
    ],
  },
  {
    id: 'takes',
    title: 'Takes and plates',
    lines: [
      { key: 'takes', label: 'Takes', isCore: true },
      { key: 'kept', label: 'Takes saved', isCore: true },
      { key: 'good', label: 'Come out good' },
      { key: 'hero/perTake', label: 'Pieces, each take' },
    ],
  },
];
