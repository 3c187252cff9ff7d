/** The made photometric files of this folder, and others written on the spot, for tests. */
import { readFileSync } from 'node:fs';
import { readPhotometry } from '../../src/laws/light/photometry/read.ts';
import type { Photometry } from '../../src/laws/light/photometry/photometry.ts';
import type { PhotometryRead, Refusal } from '../../src/laws/light/photometry/refusal.ts';

export const MADE_FILES = [
  'lambert-1000cd.ies',
  'cos10-10000cd-crlf.ies',
  'plain-1986.ies',
  'table-1991.ies',
  'quarter-1995.ies',
  'flood-b-2002.ies',
  'generated-2019.ies',
  'oval-0.ldt',
  'oval-2.ldt',
  'oval-3.ldt',
  'oval-4.ldt',
  'round-1.ldt',
  'lean-c90-0.ldt',
  'lean-c90-3.ldt',
  'lean-c0-2.ldt',
] as const;

export type MadeFile = (typeof MADE_FILES)[number];

export function madeBytes(name: MadeFile): Uint8Array {
  return new Uint8Array(readFileSync(new URL(name, import.meta.url)));
}

export function accepted(read: PhotometryRead): Photometry {
  if (!read.ok) throw new Error(`refused at ${read.refusal.where}: ${read.refusal.what}`);
  return read.photometry;
}

export function refused(read: PhotometryRead): Refusal {
  if (read.ok) throw new Error('accepted');
  return read.refusal;
}

export const madePhotometry = (name: MadeFile): Photometry => accepted(readPhotometry(madeBytes(name)));

/** Codes of what a reader had to tell. */
export const told = ({ notices }: Photometry): readonly string[] =>
  notices.map(({ code }) => code.replace('photometry.', ''));

export type Light = (at: { readonly plane_deg: number; readonly gamma_deg: number }) => number;

/** Angles from the first to the last at an even step. */
export function every(step: number, first: number, last: number): readonly number[] {
  return Array.from({ length: Math.round((last - first) / step) + 1 }, (_, i) => first + i * step);
}

export interface IesParts {
  readonly version?: string;
  readonly labels?: readonly string[];
  readonly tilt?: readonly string[];
  /** Lamps, lumens, multiplier. */
  readonly lamps?: string;
  readonly type?: number;
  /** Units, width, length, height. */
  readonly opening?: string;
  /** Ballast factor, the second factor, watts. */
  readonly factors?: string;
  readonly planes_deg?: readonly number[];
  readonly gammas_deg?: readonly number[];
  readonly light?: Light;
  readonly counts?: string;
}

/** An IES file of a given light, a plain one where nothing else is asked. */
export function iesText({
  version = 'IESNA:LM-63-2002',
  labels = ['[TEST] MADE', '[MANUFAC] made for tests'],
  tilt = ['TILT=NONE'],
  lamps = '1 -1 1',
  type = 1,
  opening = '2 0 0 0',
  factors = '1 1 100',
  planes_deg = [0],
  gammas_deg = every(5, 0, 90),
  light = () => 1000,
  counts = `${gammas_deg.length} ${planes_deg.length}`,
}: IesParts = {}): string {
  const values = planes_deg.map((plane_deg) =>
    gammas_deg.map((gamma_deg) => light({ plane_deg, gamma_deg })).join(' '),
  );
  const head = version === '' ? labels : [version, ...labels];
  const record = `${lamps} ${counts} ${type} ${opening}`;
  return [...head, ...tilt, record, factors, gammas_deg.join(' '), planes_deg.join(' '), ...values, ''].join('\n');
}

export interface LdtParts {
  readonly symmetry?: number;
  /** All planes listed. */
  readonly planes_deg?: readonly number[];
  /** Planes whose intensities are stored, in order. */
  readonly stored_deg?: readonly number[];
  readonly gammas_deg?: readonly number[];
  readonly light?: Light;
  /** Lines to stand in for others, by item from 1. */
  readonly items?: Readonly<Record<number, string>>;
  /** Lines of the sets of lamps, item by item. */
  readonly sets?: readonly string[];
}

/** A EULUMDAT file of a given light in cd per 1000 lm, a plain one where nothing else is asked. */
export function ldtText({
  symmetry = 1,
  planes_deg = every(30, 0, 330),
  stored_deg = [0],
  gammas_deg = every(5, 0, 90),
  light = () => 100,
  items = {},
  sets = ['1', 'LED', '1000', '5600', '95', '50'],
}: LdtParts = {}): string {
  const head = [
    'made for tests',
    '3',
    symmetry,
    planes_deg.length,
    0,
    gammas_deg.length,
    0,
    '',
    'made',
    '',
    '',
    '2026',
  ];
  const sizes = [100, 0, 50, 80, 0, 0, 0, 0, 0];
  const rest = [100, 0, 1, 0, 1];
  const lines = [...head, ...sizes, ...rest].map((line, i) => items[i + 1] ?? String(line));
  const values = stored_deg.flatMap((plane_deg) => gammas_deg.map((gamma_deg) => light({ plane_deg, gamma_deg })));
  const numbers = [...Array<number>(10).fill(0.5), ...planes_deg, ...gammas_deg, ...values].map(String);
  return [...lines, ...sets, ...numbers, ''].join('\r\n');
}
