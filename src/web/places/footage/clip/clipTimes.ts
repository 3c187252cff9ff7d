/** When a frame is: its number, real time on the set and screen time in the film, both from the first frame of the clip. */
export interface ClipRates {
  readonly frameRate_fps: number;
  readonly playback_fps: number;
}

const UNITS = [
  { symbol: 's', per_s: 1 },
  { symbol: 'ms', per_s: 1e-3 },
  { symbol: 'µs', per_s: 1e-6 },
] as const;

/** A time so fine that every frame has one of its own: 12.4 ms, 5.04 s, 13 min 20.08 s. */
export function sayTime(time_s: number, rate_fps: number): string {
  const frame_s = 1 / rate_fps;
  // The unit in which a frame has few decimals, so that the figure does not jump from unit to unit as it runs.
  const { symbol, per_s } = UNITS.find((unit) => frame_s >= unit.per_s / 100) ?? UNITS.at(-1)!;
  const decimals = Math.max(0, Math.ceil(-Math.log10(frame_s / per_s) - 1e-9));
  if (symbol !== 's' || time_s < 60) return `${(time_s / per_s).toFixed(decimals)} ${symbol}`;
  const parts = 10 ** decimals;
  const whole = Math.round(time_s * parts);
  return `${Math.floor(whole / (60 * parts))} min ${((whole % (60 * parts)) / parts).toFixed(decimals)} s`;
}

export interface FrameTimes {
  readonly real: string;
  readonly screen: string;
}

export const timesOf = (frame: number, { frameRate_fps, playback_fps }: ClipRates): FrameTimes => ({
  real: sayTime(frame / frameRate_fps, frameRate_fps),
  screen: sayTime(frame / playback_fps, playback_fps),
});

/** "frame 126, 126 ms on the set, 5.04 s on the screen" */
export function sayFrame(frame: number, rates: ClipRates): string {
  const { real, screen } = timesOf(frame, rates);
  return `frame ${frame}, ${real} on the set, ${screen} on the screen`;
}
