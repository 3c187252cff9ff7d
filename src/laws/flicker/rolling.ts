/**
 * Bands that a rolling shutter draws across each frame, its rows starting one after the other.
 *
 *     rows a band = 1 / (f·t)        d = f/R − round(f/R)        rows a frame = −d · rows a band
 *
 * f ripple, Hz      t time from row to row, s      R frame rate, fps      d cycles from frame to frame
 *
 * Bands move down the picture where the last is positive, and stand still where the frame rate divides the ripple.
 *
 * @source rolling-geometry row after row, each later by the same
 */
import { requireCount, requirePositive } from '../../base/domain.ts';
import { law } from '../law.ts';

export interface RollingGiven {
  readonly ripple_Hz: number;
  readonly rowTime_s: number;
  readonly rowCount: number;
  readonly frameRate_fps: number;
}

export interface RollingBands {
  readonly rowsPerBand: number;
  readonly bandsPerFrame: number;
  readonly cyclesPerFrame: number;
  readonly rowsPerFrame: number;
}

/** Bands of a rolling shutter and how far they move. Throws RangeError outside positive inputs or for no rows. */
export function rollingBandsOf({ ripple_Hz, rowTime_s, rowCount, frameRate_fps }: RollingGiven): RollingBands {
  requirePositive({ ripple_Hz, rowTime_s, frameRate_fps });
  requireCount({ rowCount }, 1);
  const rowsPerBand = 1 / (ripple_Hz * rowTime_s);
  const turns = ripple_Hz / frameRate_fps;
  const cyclesPerFrame = turns - Math.round(turns);
  // Adding zero keeps a band that stands still from printing as minus nothing.
  return {
    rowsPerBand,
    bandsPerFrame: rowCount / rowsPerBand,
    cyclesPerFrame,
    rowsPerFrame: 0 - cyclesPerFrame * rowsPerBand,
  };
}

export const rollingBands = law(rollingBandsOf, {
  id: 'rolling-bands',
  title: 'Bands of a rolling shutter',
  says: 'How wide the bands of a flickering lamp are in the picture, and how far they move from frame to frame.',
  equation: 'rows a band = 1 / (f · t); d = f/R − round(f/R); rows a frame = −d · rows a band',
  takes: {
    ripple_Hz: 'Ripple',
    rowTime_s: { title: 'Time from row to row', note: 'the sensor’s readout time over its rows' },
    rowCount: { title: 'Rows of the frame', as: 'count' },
    frameRate_fps: 'Frame rate',
  },
  gives: {
    rowsPerBand: { title: 'Rows a band', as: 'ratio' },
    bandsPerFrame: { title: 'Bands a frame', as: 'ratio' },
    cyclesPerFrame: { title: 'Cycles from frame to frame', as: 'ratio' },
    rowsPerFrame: { title: 'Rows a band moves each frame, positive down', as: 'ratio' },
  },
  holds: 'A rolling shutter read from the top. A global shutter has no bands: its whole frame flickers together.',
  sources: ['rolling-geometry'],
  cautions: ['flashing-light-and-photosensitive-people'],
  words: ['rolling shutter', 'banding', 'bands', 'readout', 'flicker', 'global shutter'],
  example: { ripple_Hz: 100, rowTime_s: 1e-5, rowCount: 1080, frameRate_fps: 960 },
});
