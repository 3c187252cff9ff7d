/** Kinds of kit as the crew speaks of them. Keys are those of the written shoot; what is not named here still shows. */
import { SHOOT } from '../../../document/schema.ts';
import { memberOf } from '../../../document/written.ts';
import type { FieldTable } from '../../../document/shape.ts';

export interface FieldGroup {
  readonly title: string;
  readonly keys: readonly string[];
}

export interface KitKind {
  /** Key under `kit`. */
  readonly key: string;
  readonly title: string;
  /** One of them, in the middle of a sentence. */
  readonly one: string;
  /** Begins ids of new ones. */
  readonly stem: string;
  /** What goes here, and what the plan does with it. */
  readonly says: string;
  /** The usual caution, where it can hurt somebody. */
  readonly caution?: string;
  readonly groups: readonly FieldGroup[];
}

type Told = Omit<KitKind, 'key' | 'groups'> & { readonly groups?: readonly FieldGroup[] };

const TOLD: Readonly<Record<string, Told>> = {
  cameras: {
    title: 'Cameras',
    one: 'camera',
    stem: 'camera',
    says: 'Sensor, formats with the highest rate of each, memory. Without one nothing can be planned.',
    groups: [
      { title: 'Sensor', keys: ['pitch', 'activeArea', 'readout', 'deadTime', 'shortestExposure'] },
      { title: 'Sensitivity', keys: ['baseIndex', 'lowestIndex', 'highestIndex', 'headroom', 'readNoise', 'quantumEfficiency'] },
      { title: 'Memory', keys: ['memory', 'partitions', 'saveRate'] },
      { title: 'Dark reference', keys: ['darkReference'] },
    ],
  },
  lenses: {
    title: 'Lenses',
    one: 'lens',
    stem: 'lens',
    says: 'Focal length, stops and nearest focus decide depth, light and distance of every shot.',
    groups: [
      { title: 'Optics', keys: ['kind', 'focalLength', 'widest', 'narrowest', 'transmittance', 'pupilMagnification', 'stopIncludesExtension'] },
      { title: 'Size and reach', keys: ['closeFocus', 'imageCircle', 'frontDiameter', 'frontToSensor'] },
    ],
  },
  attachments: { title: 'On the lens', one: 'attachment', stem: 'attachment', says: 'Tubes, filters, protective glass and mirrors: each costs light or moves the lens.' },
  lamps: {
    title: 'Lamps',
    one: 'lamp',
    stem: 'lamp',
    says: 'What they draw, and what light they give.',
    caution: 'Lamps are bright and hot, and some give ultraviolet: keep guards and filters on, let them cool, do not look into the beam.',
    groups: [
      { title: 'Lamp', keys: ['kind', 'pieces', 'power', 'colour'] },
      { title: 'Light it gives', keys: ['illuminance', 'distance', 'beam', 'field'] },
      { title: 'Wider, and its face', keys: ['flood', 'face'] },
      { title: 'Lit, and lit again', keys: ['warmUp', 'restrike', 'drift'] },
    ],
  },
  modifiers: { title: 'Modifiers', one: 'modifier', stem: 'modifier', says: 'Diffusion, scrims and gels, with the light each costs.' },
  cables: { title: 'Cables', one: 'cable', stem: 'cable', says: 'Runs between the supply and the lamps.', caution: 'Supply and wiring follow the local code and are the work of somebody licensed for it. What is written here only plans.' },
  circuits: { title: 'Circuits', one: 'circuit', stem: 'circuit', says: 'What the supply gives, each with the rating of its breaker.', caution: 'Supply and wiring follow the local code and are the work of somebody licensed for it. What is written here only plans.' },
  rigs: { title: 'Rigs', one: 'rig', stem: 'rig', says: 'What moves, drops or fires, and how late it answers: a value with a spread, as in 24 ms ± 2 ms.', caution: 'A rig moves: stand clear, and agree who arms it, who fires it and what stops it. Longsecond fires nothing.' },
  products: { title: 'Products', one: 'product', stem: 'product', says: 'What is eaten, poured or broken, with the camera-ready pieces on hand. Of what melts or softens, its time under the light is worked out.', groups: [{ title: 'On hand', keys: ['pieces'] }, { title: 'Under the light', keys: ['warms', 'start', 'thickness', 'hold'] }] },
  liquids: { title: 'Liquids', one: 'liquid', stem: 'liquid', says: 'Density and viscosity, for how a pour or a splash behaves.', caution: 'Keep liquids and live equipment apart, and dry the floor before anybody walks on it.' },
  drives: { title: 'Drives', one: 'drive', stem: 'drive', says: 'Where recordings are saved: what they hold, what is on them, how fast they write for long.' },
  links: { title: 'Links', one: 'link', stem: 'link', says: 'What carries recordings from the camera to the drives.' },
}; // prettier-ignore

const LABELS: Readonly<Record<string, string>> = {
  pitch: 'Pixel pitch',
  activeArea: 'Active area',
  deadTime: 'Dead time',
  shortestExposure: 'Shortest exposure',
  baseIndex: 'Base EI',
  lowestIndex: 'Lowest EI',
  highestIndex: 'Highest EI',
  headroom: 'Headroom',
  readNoise: 'Read noise',
  quantumEfficiency: 'Quantum efficiency',
  saveRate: 'Saving rate',
  darkReference: 'Due again after',
  focalLength: 'Focal length',
  widest: 'Widest stop',
  narrowest: 'Narrowest stop',
  closeFocus: 'Close focus',
  pupilMagnification: 'Pupil magnification',
  imageCircle: 'Image circle',
  frontDiameter: 'Front diameter',
  frontToSensor: 'Front to sensor',
  stopIncludesExtension: 'Stop allows for close focus',
  dayPrice: 'Day price',
  kind: 'Kind',
  distance: 'Read at',
  flood: 'At flood',
  face: 'Glowing face',
  loss: 'Light lost',
  pieces: 'Pieces',
  used: 'Used already',
  writeRate: 'Writing rate',
  origin: 'Copied from',
  warmUp: 'Warm-up',
  drift: 'Drift in an hour',
  warms: 'Warms like',
  start: 'Comes to the set at',
  hold: 'Holds, lights off',
};

/** What has a place of its own: what every piece has, and what is more than a field. */
const APART: ReadonlySet<string> = new Set([
  'title',
  'availability',
  'dayPrice',
  'origin',
  'note',
  'modes',
  'file',
  'waveform',
  'measured',
]);

/** `focalLength` → Focal length. */
export function labelOf(key: string): string {
  const known = memberOf(LABELS, key);
  if (known !== undefined) return known;
  const words = key.replace(/([a-z\d])([A-Z])/g, (_, before: string, after: string) => `${before} ${after.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
} // prettier-ignore

const KIT_FIELDS: FieldTable = SHOOT.fields.kit.of.fields;

/** The keys that a piece of a kind may have. */
export function fieldsOf(kindKey: string): FieldTable {
  const kind = memberOf(KIT_FIELDS, kindKey);
  return kind?.of.shape === 'map' && kind.of.of.shape === 'record' ? kind.of.of.fields : {};
}

function kindOf(key: string): KitKind {
  const { groups = [], ...told } = memberOf(TOLD, key) ?? {
    title: labelOf(key),
    one: `one of ${labelOf(key).toLowerCase()}`,
    stem: key,
    says: KIT_FIELDS[key]!.says,
  };
  const own = Object.keys(fieldsOf(key)).filter((name) => !APART.has(name));
  const placed = groups.map(({ title, keys }) => ({ title, keys: keys.filter((name) => own.includes(name)) }));
  const rest = own.filter((name) => !placed.some(({ keys }) => keys.includes(name)));
  const title = groups.length === 0 ? 'Figures' : 'More';
  return { key, ...told, groups: [...placed, { title, keys: rest }].filter(({ keys }) => keys.length > 0) };
}

/** Every kind the form of the shoot knows, in its order. */
export const KIT_KINDS: readonly KitKind[] = Object.keys(KIT_FIELDS).map(kindOf);

/** `a lens`, `an attachment`. */
export function oneOf({ one }: Pick<KitKind, 'one'>): string {
  return `${/^[aeiou]/.test(one) ? 'an' : 'a'} ${one}`;
}

export function kindNamed(key: string | undefined): KitKind | undefined {
  return KIT_KINDS.find((kind) => kind.key === key);
}
