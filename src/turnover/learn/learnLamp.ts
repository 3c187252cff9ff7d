/** What a clip of a grey card teaches of the lamp that lit it: one period of its light, as a file and an entry under the lamp. */
import { sayList } from '../../base/sayList.ts';
import { sayShown, showNumber, showShutter } from '../../base/quantity.ts';
import { takeRecordPatch, measuredPath, type MeasuredAs } from '../../document/measuredLight.ts';
import type { SentFile } from '../../document/namedFiles.ts';
import { readShoot } from '../../document/read.ts';
import { WAVEFORM_KINDS, type Lamp, type Shoot } from '../../document/schema.ts';
import type { Written } from '../../document/written.ts';
import { readMeasuredWaveform } from '../../laws/flicker/measured.ts';
import type { Waveform } from '../../laws/flicker/waveform.ts';
import { highestOrder, type CardWave } from '../../measure/learn/cardWave.ts';
import { greyCardOf } from '../../measure/learn/greyCard.ts';
import { multipleOf } from '../../plan/flickerMeasured.ts';
import { photometryTold, tellPhotometry } from '../../plan/photometry.ts';
import { tellWaveforms, waveformsTold } from '../../plan/waveforms.ts';
import type { MeasuredClip } from '../measureReply.ts';
import { hertz } from '../measureWords.ts';
import { lampCsv } from './lampCsv.ts';
import { isSynthetic, learning, SYNTHETIC_NOTICE, type Learning, type Learnt } from './learnt.ts';

/** How the lamp was set and fed, as it is written; empty where it is left out: full level, as the kit says, the grid. */
export type LampSetAs = Pick<MeasuredAs, 'level' | 'colour' | 'supply'>;

export interface LearnLampGiven {
  readonly written: Written;
  readonly lampId: string;
  readonly clip: Pick<MeasuredClip, 'name' | 'measurement'>;
  readonly exposureTime_s?: number;
  /** Rate of the lamp, where somebody knows it; else that of the mains. */
  readonly rate_Hz?: number;
  readonly as: LampSetAs;
  /** YYYY-MM-DD. */
  readonly date: string;
}

/** What a text is once it is kept as a file: under a name, by its hash. */
export type FileOf = (text: string, name: string) => Pick<SentFile, 'name' | 'sha256' | 'size_B'>;

export interface LearntLamp extends Learnt {
  /** The period as text of time and light, to be kept with the shoot. */
  readonly csv: { readonly name: string; readonly text: string };
  readonly wave: CardWave;
}

const MAINS_Hz = [50, 60];
const percent = (fraction: number, digits = 2): string => `${showNumber(100 * fraction, digits)} %`;

/** "6.2 %, give or take 0.02 %". */
const depthWords = ({ depthFraction, depthDeviationFraction }: CardWave): string =>
  `${percent(depthFraction, 3)}, give or take ${percent(depthDeviationFraction)}`;

/** How the plan takes the lamp now. */
function before({ waveform, measured }: Lamp): { readonly before: string; readonly says: string } {
  const count = Object.keys(measured).length;
  if (count > 0) return { before: count === 1 ? 'one measurement' : `${count} measurements`, says: 'each holds for its own level, colour and supply' }; // prettier-ignore
  if (waveform.kind === undefined) return { before: '', says: 'as usual for its kind' };
  const depth = waveform.depthFraction === undefined ? '' : `, ${percent(waveform.depthFraction)} deep`;
  return { before: `${WAVEFORM_KINDS[waveform.kind]}${depth}`, says: 'as written' };
}

/** Tells a shoot what its files hold, the new one among them. */
const tellingOf = (waveform: Waveform, sha256: string) => (was: Shoot, is: Shoot): void => {
  const [photometry, waves] = [photometryTold(was), waveformsTold(was)];
  if (photometry) tellPhotometry(is, photometry.files, photometry.unread);
  tellWaveforms(is, new Map([...(waves?.files ?? []), [sha256, waveform]]), waves?.unread);
}; // prettier-ignore

const LAMP_CAUTIONS = ['Lamps are hot and bright: nobody looks in, guards and safety glasses of arc lamps stay on, and supply belongs to a qualified electrician. Pulsing light can trouble photosensitive people.']; // prettier-ignore

/** A name for the file that any system takes. */
const fileName = (lampId: string, clipName: string): string =>
  `${lampId}, ${clipName.replace(/\.[^.]*$/, '').replace(/[^\p{L}\p{N} ._-]+/gu, '-')}.csv`.slice(0, 200);

/** The edit that gives a lamp its light as measured. Its file has to be kept with the shoot before it is taken. */
export function learnLamp(given: LearnLampGiven, fileOf: FileOf): Learning<LearntLamp> {
  const { written, lampId, clip, exposureTime_s, rate_Hz, as, date } = given;
  const { shoot } = readShoot(written);
  const lamp = Object.hasOwn(shoot.kit.lamps, lampId) ? shoot.kit.lamps[lampId] : undefined;
  if (!lamp) return { ok: false, notices: [], refusal: { code: 'learn.unknown-lamp', what: `There is no lamp "${lampId}"`, mend: Object.keys(shoot.kit.lamps).length === 0 ? 'The kit has no lamps yet.' : `The lamps are ${sayList(Object.keys(shoot.kit.lamps).slice(0, 40))}.` } };
  const synthetic = isSynthetic([clip.name]);
  const { frequency_Hz: mains_Hz } = shoot.shoot.mains;
  const reading = greyCardOf({ measurement: clip.measurement, ...(exposureTime_s !== undefined && { exposureTime_s }), ...(rate_Hz !== undefined && { rate_Hz }), ...(mains_Hz !== undefined && { mains_Hz }) });
  if (!reading.ok) return { ok: false, refusal: reading.refusal, notices: synthetic ? [SYNTHETIC_NOTICE] : [] };
  const { wave } = reading;
  const { frameRate_fps, frameCount } = clip.measurement;
  const conditions = `${frameCount} frames at ${showNumber(frameRate_fps, 5)} fps, shutter ${sayShown(showShutter(exposureTime_s!))}`;
  const band = `harmonics up to ${showNumber(wave.orders.seen.at(-1)!.order * wave.rate_Hz, 4)} Hz could be told`;
  const note = `Measured ${date} from a grey card, ${clip.name}: ${conditions}; ${band}; depth ${depthWords(wave)}.${synthetic ? ' SYNTHETIC: worked out, not filmed.' : ''}`;
  const text = lampCsv(wave.period, note);
  const back = readMeasuredWaveform(text);
  if (!back.ok) return { ok: false, notices: [], refusal: { code: 'learn.unreadable', what: back.refusal.what, mend: back.refusal.mend } };
  const title = lamp.title ?? lampId;
  const file: SentFile = { kind: 'application/octet-stream', ...fileOf(text, fileName(lampId, clip.name)) };
  const mains = mains_Hz === undefined ? MAINS_Hz : [mains_Hz, ...MAINS_Hz];
  const hasOwnRate = mains.every((of) => multipleOf(wave.period.period_s, of) === undefined);
  const order = highestOrder(wave);
  const learnt = learning(written, {
    kind: 'lamp',
    summary: `${title}: light measured, ${clip.name}`,
    says: [
      `${title} pulses at ${hertz(wave.rate_Hz, wave.rateDeviation_Hz)} by ${depthWords(wave)} (brightest less dimmest over their sum).`,
      `${order <= 1 ? 'Only the pulse itself stands out: a plain wave' : `It is put together from ${wave.harmonics.filter(({ isThere }) => isThere).length} harmonics, up to ${showNumber(order * wave.rate_Hz, 4)} Hz`}; at any moment its light is known to ${percent(wave.lightDeviationFraction)} of the mean.`,
      `It holds for ${[as.level === '' ? 'full level' : `a level of ${as.level}`, ...(as.colour === '' ? [] : [as.colour]), `the ${as.supply === '' ? 'grid' : as.supply}`].join(', ')}, and for nothing else.`,
    ],
    notices: [...(synthetic ? [SYNTHETIC_NOTICE] : []), ...reading.notices],
    cautions: LAMP_CAUTIONS,
    changes: [{ path: measuredPath(lampId), title: `Light of ${title}`, ...before(lamp), after: `${percent(wave.depthFraction, 3)} deep at ${showNumber(wave.rate_Hz, 5)} Hz, as measured` }],
    patch: takeRecordPatch(written, { lampId, file, as: { ...as, hasOwnRate }, title: `${date}, ${clip.name}`, note }),
    tell: tellingOf(back.waveform, file.sha256),
  });
  return learnt.ok ? { ok: true, learnt: { ...learnt.learnt, csv: { name: file.name, text }, wave } } : learnt;
} // prettier-ignore
