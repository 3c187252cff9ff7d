/** The board as film: frames in their order, and whether their seconds add up to what is to be delivered. */
import { ratioOf } from '../base/rational.ts';
import type { Shoot } from '../document/schema.ts';
import type { Plan } from '../plan/types.ts';

export interface FilmFrame {
  readonly id: string;
  /** Its place in the film, from 1. */
  readonly number: number;
  readonly title: string;
  readonly words: string;
  readonly screenTime_s: number | undefined;
  /** Shots that serve it, in the order people read them. */
  readonly shots: readonly { readonly id: string; readonly number: number; readonly title: string }[];
  /** What its only shot gives, where that is another length than the frame's. */
  readonly given_s?: number;
}

export interface FilmLength {
  /** What the frames that say their seconds add up to. */
  readonly screenTime_s: number;
  /** Frames that do not say. */
  readonly openCount: number;
  /** The first deliverable that says how long it runs. */
  readonly target?: { readonly title: string; readonly length_s: number };
  /** Above zero: time of the deliverable that no frame fills. Below: frames beyond its end. */
  readonly left_s?: number;
  /** `open`: some frame or the deliverable does not say. */
  readonly verdict: 'fits' | 'free' | 'over' | 'open';
}

/** Ids of board frames in the order of the film: the stated order first, then the rest as written. */
export function boardOrder({ order, board }: Shoot): readonly string[] {
  const stated = order.board.filter((id) => board[id] !== undefined);
  return [...new Set([...stated, ...Object.keys(board)])];
}

const FALLBACK_RATE_fps = 25;

/** Times closer than half a frame of the film are the same cut. */
function halfFrame_s(shoot: Shoot): number {
  const rate = Object.values(shoot.deliverables).find(({ rate }) => rate !== undefined)?.rate;
  return 0.5 / (rate === undefined ? FALLBACK_RATE_fps : ratioOf(rate));
}

export function filmFrames(shoot: Shoot, plan: Plan): readonly FilmFrame[] {
  const served = new Map(plan.shots.map(({ id }) => [id, shoot.shots[id]?.board ?? []]));
  const tolerance_s = halfFrame_s(shoot);
  return boardOrder(shoot).map((id, i) => {
    const { title, words = '', screenTime_s } = shoot.board[id]!;
    const shots = plan.shots.filter((shot) => served.get(shot.id)?.includes(id) === true);
    const [only, another] = shots;
    const gives_s = only && !another && served.get(only.id)!.length === 1 ? only.clocks?.screenTime_s : undefined;
    const isOther =
      gives_s !== undefined && screenTime_s !== undefined && Math.abs(gives_s - screenTime_s) > tolerance_s;
    return {
      id,
      number: i + 1,
      title: title ?? id,
      words,
      screenTime_s,
      shots: shots.map(({ id: shotId, number, title: shotTitle }) => ({ id: shotId, number, title: shotTitle })),
      ...(isOther ? { given_s: gives_s } : {}),
    };
  });
}

export function filmLength(shoot: Shoot): FilmLength {
  const lengths = boardOrder(shoot).map((id) => shoot.board[id]!.screenTime_s);
  const known = lengths.filter((length) => length !== undefined);
  const screenTime_s = known.reduce((sum, length_s) => sum + length_s, 0);
  const openCount = lengths.length - known.length;
  const first = Object.entries(shoot.deliverables).find(([, { length_s }]) => length_s !== undefined);
  if (!first) return { screenTime_s, openCount, verdict: 'open' };
  const [id, { title = id, length_s = 0 }] = first;
  const difference_s = length_s - screenTime_s;
  const left_s = Math.abs(difference_s) <= halfFrame_s(shoot) ? 0 : difference_s;
  const verdict = left_s < 0 ? 'over' : openCount > 0 ? 'open' : left_s === 0 ? 'fits' : 'free';
  return { screenTime_s, openCount, target: { title, length_s }, left_s, verdict };
}
