/** Frames of the board as sheets show them, each with room for its picture. */
import type { Shot } from '../../document/schema.ts';
import { filmFrames, filmLength, type FilmFrame } from '../film.ts';
import { sayNumber, sayShots } from './say.ts';
import { firstAspect } from './shotWords.ts';
import type { BoardFrame, FramesBlock, Source } from './sheet.ts';

function frameOf(source: Source, { number, title, words, screenTime_s, shots, given_s }: FilmFrame): BoardFrame {
  const given = given_s === undefined ? '' : `; its shot gives ${sayNumber(source, 'screenTime_s', given_s)}`;
  return {
    number: String(number),
    title,
    words,
    seconds: screenTime_s === undefined ? 'no length yet' : sayNumber(source, 'screenTime_s', screenTime_s),
    note: `${shots.length === 0 ? 'no shot serves it' : sayShots(shots)}${given}`,
  };
}

/** The frames of the board that a shot serves; undefined for none. */
export function servedFrames(source: Source, { board }: Shot): FramesBlock | undefined {
  const frames = filmFrames(source.shoot, source.plan).filter(({ id }) => board.includes(id));
  if (frames.length === 0) return undefined;
  return {
    block: 'frames',
    aspect: firstAspect(source.shoot),
    frames: frames.map((frame) => ({ ...frameOf(source, frame), note: '' })),
  };
}

/** The whole board; none while it has no frame. */
export function boardFrames(source: Source): readonly FramesBlock[] {
  const frames = filmFrames(source.shoot, source.plan);
  if (frames.length === 0) return [];
  return [
    { block: 'frames', aspect: firstAspect(source.shoot), frames: frames.map((frame) => frameOf(source, frame)) },
  ];
}

/** Whether the seconds of the board add up to the film, in a sentence. */
export function sayFilm(source: Source): string {
  const { screenTime_s, openCount, target, left_s = 0, verdict } = filmLength(source.shoot);
  const time = (value: number) => sayNumber(source, 'screenTime_s', value);
  const sum = `The frames come to ${time(screenTime_s)}`;
  const open = openCount === 0 ? '' : `, ${openCount === 1 ? 'one frame has' : `${openCount} frames have`} no length yet`;
  if (!target) return `${sum}${open}; no deliverable says how long it runs.`;
  const film = `${time(target.length_s)} (${target.title})`;
  if (verdict === 'fits') return `${sum} of ${film}: it fits.`;
  if (verdict === 'over') return `${sum} of ${film}: ${time(-left_s)} too long.`;
  if (verdict === 'free') return `${sum} of ${film}: ${time(left_s)} not filled yet.`;
  return `${sum} of ${film}${open}.`;
} // prettier-ignore
