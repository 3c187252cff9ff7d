/**
 * The kinds of quantity this crew writes, the units each accepts, and the one unit each has in code.
 * A kind's `unit` is the suffix of names that hold it (`exposureTime_s`); `per` turns a written unit into it.
 */

export interface Unit {
  readonly symbol: string;
  /** Other spellings a person may type. */
  readonly also?: readonly string[];
  /** Base units in one of these. */
  readonly per: number;
  /** Base units at zero of this scale, for temperatures. */
  readonly offset?: number;
}

export interface Kind {
  readonly name: string;
  /** The unit in code, as the suffix of a name. */
  readonly unit: string;
  readonly units: readonly Unit[];
  /** Units that a printed value is shown in, smallest first; metric and imperial. */
  readonly show: { readonly metric: readonly string[]; readonly imperial: readonly string[] };
  /** A unit that is used from this value on, where that is not one of itself: 0.8 mm, not 800 µm. */
  readonly from?: Readonly<Record<string, number>>;
  /** How a person would write one, for error messages. */
  readonly example: string;
}

const INCH_m = 0.0254;
const FOOT_m = 0.3048;

function kind(
  name: string,
  unit: string,
  example: string,
  units: readonly (readonly [symbol: string, per: number, ...also: string[]])[],
  show: readonly string[],
  imperial: readonly string[] = show,
): Kind {
  return {
    name,
    unit,
    example,
    units: units.map(([symbol, per, ...also]) => ({ symbol, per, also })),
    show: { metric: show, imperial },
  };
}

export const KINDS = {
  time: kind(
    'a time',
    's',
    '1/2000 s',
    [
      ['s', 1, 'sec', 'second', 'seconds'],
      ['ms', 1e-3],
      ['µs', 1e-6, 'us', 'μs'],
      ['ns', 1e-9],
      ['min', 60, 'minute', 'minutes'],
      ['h', 3600, 'hour', 'hours'],
    ],
    ['µs', 'ms', 's', 'min', 'h'],
  ),
  length: {
    ...kind(
      'a length',
      'm',
      '240 mm',
      [
        ['m', 1, 'metre', 'metres', 'meter', 'meters'],
        ['cm', 1e-2],
        ['mm', 1e-3],
        ['µm', 1e-6, 'um', 'μm', 'micron', 'microns'],
        ['nm', 1e-9],
        ['in', INCH_m, '"', '″', "''", 'inch', 'inches'],
        ['ft', FOOT_m, "'", '′', 'foot', 'feet'],
      ],
      ['µm', 'mm', 'm'],
      ['in', 'ft'],
    ),
    from: { mm: 1e-4 },
  },
  speed: kind(
    'a speed',
    'm_per_s',
    '1.5 m/s',
    [
      ['m/s', 1],
      ['cm/s', 1e-2],
      ['mm/s', 1e-3],
      ['km/h', 1 / 3.6],
      ['ft/s', FOOT_m],
      ['in/s', INCH_m],
    ],
    ['mm/s', 'm/s'],
    ['in/s', 'ft/s'],
  ),
  acceleration: kind('an acceleration', 'm_per_s2', '9.81 m/s²', [['m/s²', 1, 'm/s2', 'm/s^2']], ['m/s²']),
  illuminance: kind(
    'an illuminance',
    'lx',
    '41 klx',
    [
      ['lx', 1, 'lux'],
      ['klx', 1e3, 'klux'],
      ['fc', 1 / FOOT_m ** 2, 'footcandle', 'footcandles'],
    ],
    ['lx', 'klx'],
    ['fc'],
  ),
  luminance: kind(
    'a luminance',
    'cd_per_m2',
    '900 cd/m²',
    [
      ['cd/m²', 1, 'cd/m2', 'cd/m^2', 'nit', 'nits'],
      ['kcd/m²', 1e3, 'kcd/m2'],
      ['fL', 1 / (Math.PI * FOOT_m ** 2), 'footlambert', 'footlamberts'],
    ],
    ['cd/m²', 'kcd/m²'],
    ['fL'],
  ),
  luminanceExposure: kind(
    'a luminance times a time',
    'cd_s_per_m2',
    '12.5 cd·s/m²',
    [['cd·s/m²', 1, 'cd·s/m2', 'cd s/m²', 'cd s/m2', 'cd*s/m^2']],
    ['cd·s/m²'],
  ),
  exposure: kind('a luminous exposure', 'lx_s', '0.16 lx·s', [['lx·s', 1, 'lx s', 'lxs', 'lx*s']], ['lx·s']),
  luminousFlux: kind(
    'a luminous flux',
    'lm',
    '20 klm',
    [
      ['lm', 1, 'lumen', 'lumens'],
      ['klm', 1e3],
    ],
    ['lm', 'klm'],
  ),
  luminousIntensity: kind(
    'a luminous intensity',
    'cd',
    '180 kcd',
    [
      ['cd', 1, 'candela'],
      ['kcd', 1e3],
    ],
    ['cd', 'kcd'],
  ),
  exitance: kind('a luminous exitance', 'lm_per_m2', '9000 lm/m²', [['lm/m²', 1, 'lm/m2', 'lm/m^2']], ['lm/m²']),
  efficacy: kind('a luminous efficacy', 'lm_per_W', '300 lm/W', [['lm/W', 1]], ['lm/W']),
  irradiance: kind(
    'an irradiance',
    'W_per_m2',
    '1000 W/m²',
    [
      ['W/m²', 1, 'W/m2', 'W/m^2'],
      ['kW/m²', 1e3, 'kW/m2', 'kW/m^2'],
      ['mW/cm²', 10, 'mW/cm2', 'mW/cm^2'],
    ],
    ['W/m²', 'kW/m²'],
  ),
  radiantExposure: kind(
    'a radiant exposure',
    'J_per_m2',
    '30 J/m²',
    [
      ['J/m²', 1, 'J/m2', 'J/m^2'],
      ['kJ/m²', 1e3, 'kJ/m2', 'kJ/m^2'],
    ],
    ['J/m²', 'kJ/m²'],
  ),
  radiance: kind(
    'a radiance',
    'W_per_m2_sr',
    '100 W/(m²·sr)',
    [
      ['W/(m²·sr)', 1, 'W/m²/sr', 'W/m2/sr', 'W/(m2 sr)', 'W/m2sr'],
      ['kW/(m²·sr)', 1e3, 'kW/m²/sr', 'kW/m2/sr', 'kW/(m2 sr)', 'kW/m2sr'],
    ],
    ['W/(m²·sr)', 'kW/(m²·sr)'],
  ),
  heatTransfer: kind(
    'a heat transfer coefficient',
    'W_per_m2_K',
    '8 W/(m²·K)',
    [['W/(m²·K)', 1, 'W/m²K', 'W/m2K', 'W/(m2 K)', 'W/m2/K']],
    ['W/(m²·K)'],
  ),
  specificHeat: kind(
    'a specific heat',
    'J_per_kg_K',
    '1.9 kJ/(kg·K)',
    [
      ['J/(kg·K)', 1, 'J/kgK', 'J/(kg K)', 'J/kg/K'],
      ['kJ/(kg·K)', 1e3, 'kJ/kgK', 'kJ/(kg K)', 'kJ/kg/K'],
    ],
    ['J/(kg·K)', 'kJ/(kg·K)'],
  ),
  latentHeat: kind(
    'a heat of melting',
    'J_per_kg',
    '334 kJ/kg',
    [
      ['J/kg', 1],
      ['kJ/kg', 1e3],
    ],
    ['J/kg', 'kJ/kg'],
  ),
  angle: kind(
    'an angle',
    'deg',
    '172.8°',
    [
      ['°', 1, 'deg', 'degree', 'degrees'],
      ['rad', 180 / Math.PI],
    ],
    ['°'],
  ),
  bytes: kind(
    'an amount of data',
    'B',
    '64 GB or 64 GiB',
    [
      ['B', 1, 'byte', 'bytes'],
      ['kB', 1e3, 'KB'],
      ['MB', 1e6],
      ['GB', 1e9],
      ['TB', 1e12],
      ['KiB', 2 ** 10],
      ['MiB', 2 ** 20],
      ['GiB', 2 ** 30],
      ['TiB', 2 ** 40],
    ],
    ['B', 'kB', 'MB', 'GB', 'TB'],
  ),
  byteRate: kind(
    'a data rate',
    'B_per_s',
    '1.1 GB/s or 10 Gb/s',
    [
      ['B/s', 1],
      ['kB/s', 1e3],
      ['MB/s', 1e6],
      ['GB/s', 1e9],
      ['MiB/s', 2 ** 20],
      ['GiB/s', 2 ** 30],
      ['kb/s', 125, 'kbit/s'],
      ['Mb/s', 1.25e5, 'Mbit/s'],
      ['Gb/s', 1.25e8, 'Gbit/s'],
    ],
    ['B/s', 'kB/s', 'MB/s', 'GB/s'],
  ),
  power: kind(
    'a power',
    'W',
    '650 W',
    [
      ['W', 1],
      ['mW', 1e-3],
      ['kW', 1e3],
    ],
    ['W', 'kW'],
  ),
  voltage: kind('a voltage', 'V', '230 V', [['V', 1]], ['V']),
  current: kind(
    'a current',
    'A',
    '16 A',
    [
      ['A', 1],
      ['mA', 1e-3],
    ],
    ['A'],
  ),
  frequency: kind(
    'a frequency',
    'Hz',
    '50 Hz',
    [
      ['Hz', 1],
      ['kHz', 1e3],
      ['MHz', 1e6],
    ],
    ['Hz', 'kHz', 'MHz'],
  ),
  rate: kind('a frame rate', 'fps', '1000 fps', [['fps', 1, 'frames a second']], ['fps']),
  stops: kind('a number of stops', 'stops', '1⅓ stops', [['stops', 1, 'stop', 'EV']], ['stops']),
  decibels: kind('a ratio in decibels', 'dB', '30 dB', [['dB', 1]], ['dB']),
  pixels: kind('a number of pixels', 'px', '2 px', [['px', 1, 'pixel', 'pixels']], ['px']),
  imageSpeed: kind('a speed across the picture', 'px_per_s', '20000 px/s', [['px/s', 1]], ['px/s']),
  mass: kind(
    'a mass',
    'kg',
    '120 g',
    [
      ['kg', 1],
      ['g', 1e-3],
      ['mg', 1e-6],
      ['lb', 0.45359237],
      ['oz', 0.45359237 / 16],
    ],
    ['mg', 'g', 'kg'],
    ['oz', 'lb'],
  ),
  density: kind(
    'a density',
    'kg_per_m3',
    '998 kg/m³',
    [
      ['kg/m³', 1, 'kg/m3', 'kg/m^3'],
      ['g/cm³', 1e3, 'g/cm3', 'g/ml', 'g/mL'],
    ],
    ['kg/m³'],
  ),
  viscosity: kind(
    'a viscosity',
    'Pa_s',
    '1 mPa·s',
    [
      ['Pa·s', 1, 'Pa s', 'Pa*s', 'Pas'],
      ['mPa·s', 1e-3, 'mPa s', 'mPa*s', 'mPas', 'cP'],
      ['µPa·s', 1e-6, 'uPa·s', 'uPas'],
    ],
    ['µPa·s', 'mPa·s', 'Pa·s'],
  ),
  forcePerLength: kind(
    'a force per length',
    'N_per_m',
    '72.8 mN/m',
    [
      ['N/m', 1],
      ['mN/m', 1e-3, 'dyn/cm'],
      ['N/mm', 1e3],
    ],
    ['mN/m', 'N/m'],
  ),
  flow: kind(
    'a flow of liquid',
    'm3_per_s',
    '20 mL/s',
    [
      ['m³/s', 1, 'm3/s', 'm^3/s'],
      ['L/s', 1e-3, 'l/s'],
      ['L/min', 1e-3 / 60, 'l/min'],
      ['mL/s', 1e-6, 'ml/s', 'cm³/s', 'cm3/s', 'cm^3/s'],
    ],
    ['mL/s', 'L/s'],
  ),
  pressure: kind(
    'a pressure',
    'Pa',
    '5 bar',
    [
      ['Pa', 1],
      ['kPa', 1e3],
      ['MPa', 1e6],
      ['mbar', 1e2],
      ['bar', 1e5],
      ['psi', (0.45359237 * 9.80665) / INCH_m ** 2],
    ],
    ['Pa', 'kPa', 'bar'],
    ['psi'],
  ),
  rotation: kind(
    'a speed of rotation',
    'rev_per_s',
    '300 rpm',
    [
      ['rev/s', 1, 'turns/s', 'turns a second'],
      ['rpm', 1 / 60, 'rev/min'],
    ],
    ['rev/s'],
  ),
  temperature: {
    name: 'a temperature',
    unit: 'degC',
    example: '18 °C',
    units: [
      { symbol: '°C', per: 1, also: ['C', 'degC'] },
      { symbol: '°F', per: 5 / 9, offset: (-32 * 5) / 9, also: ['F', 'degF'] },
      { symbol: 'K', per: 1, offset: -273.15 },
    ],
    show: { metric: ['°C'], imperial: ['°F'] },
  },
  colourTemperature: kind('a colour temperature', 'K', '5600 K', [['K', 1]], ['K']),
  charge: kind('a number of electrons', 'e', '20 e-', [['e-', 1, 'e⁻', 'electrons']], ['e-']),
  fStop: kind('an f-number', '', 'f/8', [], []),
  tStop: kind('a T-stop', '', 'T5.6⅓', [], []),
  index: kind('an exposure index', '', '800', [], []),
  pieces: kind('a number of pieces', '', '24', [], []),
  share: kind('a share', '', '0.8', [], []),
  money: kind('a sum of money', 'money', '120', [], []),
} as const satisfies Record<string, Kind>;

export type KindName = keyof typeof KINDS;

/** Units as they stand at the end of a name that is in another unit than its kind has in code. */
const PREFIXED: Readonly<Record<string, { readonly kind: KindName; readonly symbol: string }>> = {
  mm: { kind: 'length', symbol: 'mm' },
  um: { kind: 'length', symbol: 'µm' },
  fc: { kind: 'illuminance', symbol: 'fc' },
  rad: { kind: 'angle', symbol: 'rad' },
};

/** The unit that a name's suffix insists on, where it is not the one its kind has in code: `mm` → millimetres. */
export function ownUnit(suffix: string): Unit | undefined {
  const prefixed = PREFIXED[suffix];
  return prefixed && KINDS[prefixed.kind].units.find(({ symbol }) => symbol === prefixed.symbol);
}

/** How many base units of its kind one unit of a name's suffix holds: `mm` → 0.001. */
export function baseUnitsPer(suffix: string): number {
  return ownUnit(suffix)?.per ?? 1;
}

/** The unit suffix of a name: `exposureTime_s` → `s`, `dropSpeed_m_per_s` → `m_per_s`, `fNumber` → ''. */
export function unitSuffix(name: string): string {
  const at = name.indexOf('_');
  return at < 0 ? '' : name.slice(at + 1);
}

/** The kind a unit suffix belongs to, or undefined. */
export function kindOfSuffix(suffix: string): KindName | undefined {
  if (suffix === '') return undefined;
  return PREFIXED[suffix]?.kind ?? (Object.keys(KINDS) as KindName[]).find((name) => KINDS[name].unit === suffix);
}
