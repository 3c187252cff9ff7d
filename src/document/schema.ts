/** The shoot, version 1: every section and key, as written and as read. */
import { choice, clock, flag, list, map, measured, number, position, quantity, rate, record, recordShape, reference, shutter, size, text, type ReadOf, type ReadRecord } from './shape.ts'; // prettier-ignore

export const DOCUMENT_VERSION = 1;

const TITLE = text('What people call it.');
const NOTE = text('Anything worth keeping.', 4000);
const ORIGIN = text('The library entry and version it was copied from.');

const AVAILABILITY = choice('Whether it is on the set.', {
  here: 'on the set, or coming',
  hire: 'can be hired',
  unwanted: 'not to be used',
});

/** What every piece of kit has. */
const KIT_ITEM = {
  title: TITLE,
  availability: AVAILABILITY,
  dayPrice: number('dayPrice', 'ratio', 'What a day of it costs.', { least: 0 }),
  origin: ORIGIN,
  note: NOTE,
};

export const MODE = recordShape({
  title: TITLE,
  pixels: size('pixels', 'Pixels across and down in the recorded picture.'),
  rate: quantity('maxRate_fps', 'rate', 'The highest frame rate in this mode.'),
  binning: number('binningCount', 'count', 'Photosites joined along each side of a picture pixel; 1 reads a window.', {
    least: 1,
    most: 16,
  }),
  bits: number('bitDepthCount', 'count', 'Bits recorded for each pixel.', { least: 1, most: 32 }),
});

const DARK_AGAIN = {
  mode: 'another mode',
  rate: 'another frame rate',
  shutter: 'another exposure time',
  index: 'another exposure index',
} as const;

export const CAMERA = recordShape({
  ...KIT_ITEM,
  pitch: quantity('pixelPitch_m', 'length', 'Distance between photosites.', { most: 1e-3 }),
  activeArea: size('activeArea', 'Photosites across and down that form a picture.'),
  modes: map(MODE, 'The picture formats it records, with the highest rate of each.'),
  memory: quantity('memory_B', 'bytes', 'Memory that one recording may fill.'),
  partitions: number('partitionCount', 'count', 'Parts the memory is divided into.', { least: 1, most: 1000 }),
  deadTime: quantity('deadTime_s', 'time', 'Time in each frame when the shutter cannot be open.', { zero: true }),
  shortestExposure: quantity('shortestExposure_s', 'time', 'The shortest exposure it can make.'),
  baseIndex: number('baseIsoSpeed', 'isoSpeed', 'The exposure index that its headroom is stated for.'),
  lowestIndex: number('lowestIsoSpeed', 'isoSpeed', 'The lowest exposure index to rate it at.'),
  highestIndex: number('highestIsoSpeed', 'isoSpeed', 'The highest exposure index to rate it at.'),
  headroom: measured('headroom_stops', 'stops', 'From middle grey to clipping at the base index.'),
  readNoise: measured('readNoise_e', 'charge', 'Noise of reading one photosite.'),
  quantumEfficiency: number('quantumEfficiencyFraction', 'fraction', 'Electrons for each photon that reaches the sensor, filters included.'),
  saveRate: measured('saveRate_B_per_s', 'byteRate', 'How fast a recording leaves its memory.'),
  readout: choice('How rows are exposed.', { global: 'all rows at once', rolling: 'row after row' }),
  darkReference: list({ shape: 'choice', words: DARK_AGAIN }, 'Changes after which its dark reference is due again.', 10),
}); // prettier-ignore

export const LENS = recordShape({
  ...KIT_ITEM,
  focalLength: quantity('focalLength_mm', 'length', 'Focal length.', { most: 5 }),
  widest: quantity('widestStop', 'tStop', 'The widest marked stop.'),
  narrowest: quantity('narrowestStop', 'tStop', 'The narrowest marked stop.'),
  transmittance: number('transmittanceFraction', 'fraction', 'Light that passes: what makes T differ from f.'),
  closeFocus: quantity('closeFocus_m', 'length', 'Nearest focus, measured from the sensor.'),
  pupilMagnification: number('pupilMagnificationRatio', 'ratio', 'Exit pupil over entrance pupil.', { least: 0.05, most: 20 }),
  imageCircle: quantity('imageCircle_mm', 'length', 'Diameter of the picture it forms at infinity.', { most: 1 }),
  frontDiameter: quantity('frontDiameter_mm', 'length', 'Diameter of the front.', { most: 2 }),
  frontToSensor: quantity('frontToSensor_m', 'length', 'Front of the lens to the sensor, focused at infinity.', { most: 5 }),
  kind: choice('What it is made for.', {
    normal: 'marked from near focus to infinity',
    macro: 'made for close focus',
    probe: 'a long narrow front',
    tilt: 'its plane of focus can be tilted',
  }),
  stopIncludesExtension: flag('stopIncludesExtension', 'Its marked stop already allows for the light lost at close focus.'),
}); // prettier-ignore

export const ATTACHMENT = recordShape({
  ...KIT_ITEM,
  kind: choice('What it is.', {
    tube: 'a tube that moves the lens away from the sensor',
    nd: 'a neutral density filter',
    polariser: 'a polarising filter',
    diffusion: 'a diffusion filter',
    glass: 'a protective glass',
    mirror: 'a mirror',
  }),
  length: quantity('length_m', 'length', 'What a tube adds.', { most: 2 }),
  loss: quantity('loss_stops', 'stops', 'Light it costs.', { least: 0, most: 20 }),
}); // prettier-ignore

const LAMP_AT = {
  illuminance: measured('illuminance_lx', 'illuminance', 'Light on its axis at the distance below, at full level.'),
  distance: quantity('distance_m', 'length', 'From its front to where that was read.', { most: 1000 }),
  beam: quantity('beam_deg', 'angle', 'Full angle within which it gives at least half of that.', { most: 180 }),
  field: quantity('field_deg', 'angle', 'Full angle within which it gives at least a tenth of that.', { most: 360 }),
};

export const LAMP = recordShape({
  ...KIT_ITEM,
  kind: choice('What makes its light.', {
    tungsten: 'a hot filament',
    discharge: 'an arc',
    fluorescent: 'a fluorescent tube',
    led: 'light-emitting diodes',
  }),
  pieces: number('pieceCount', 'count', 'How many of it there are; left out, one.', { most: 1000 }),
  power: quantity('power_W', 'power', 'What it draws at full level.'),
  colour: quantity('colourTemperature_K', 'colourTemperature', 'Its colour at full level.'),
  file: reference('files', 'Its photometric file, IES or EULUMDAT; what is written below is then not used.'),
  ...LAMP_AT,
  flood: record(LAMP_AT, 'The same at its widest setting; what is written above is then its narrowest.'),
  face: record(
    {
      width: quantity('faceWidth_m', 'length', 'Across the part that glows; alone, a round face.', { most: 20 }),
      height: quantity('faceHeight_m', 'length', 'Up the part that glows.', { most: 20 }),
      luminance: measured('luminance_cd_per_m2', 'luminance', 'Brightness of a face that glows evenly, at full level.'),
    },
    'Its glowing face: a panel or softbox lights from all of it; a lens is near when it is closer than five faces.',
  ),
}); // prettier-ignore

export const PLACED_LAMP = recordShape({
  title: TITLE,
  note: NOTE,
  lamp: reference('kit.lamps', 'Which lamp it is.'),
  at: position('Where its front stands: right of, away from and above the subject point.'),
  aim: position('What its axis points at; left out, the subject point.'),
  flood: number('floodFraction', 'fraction', 'From spot, 0, to flood, 1.', { least: 0 }),
  level: number('levelFraction', 'fraction', 'Share of its full light.', { least: 0 }),
  modifiers: list({ shape: 'reference', to: 'kit.modifiers' }, 'Diffusion, scrims and gels in front of it.', 20),
  off: flag('isOff', 'Not lit.'),
});

export const SETUP = recordShape({
  title: TITLE,
  note: NOTE,
  lamps: map(PLACED_LAMP, 'The lamps that light it; what they give is worked out where nothing was read.'),
  faces: position('A place that the lit surface faces, such as that of a lamp behind; left out, the camera.'),
  illuminance: measured('illuminance_lx', 'illuminance', 'Incident light at the subject point, on the surface that counts.'),
  luminance: measured('luminance_cd_per_m2', 'luminance', 'Brightness of the surface seen through, or mirrored in, the subject.'),
  reading: choice('Where the figures come from.', { metered: 'read on the set', stated: 'intended, not yet read' }),
}); // prettier-ignore

export const KNOT = recordShape({
  at: quantity('screenTime_s', 'time', 'Time on screen.', { zero: true }),
  speed: number('speedFraction', 'ratio', 'Playback speed there; 1 is real time.', { least: 1e-6, most: 100 }),
});

/** What a plate must share with the shot it is made for, unless the person lets it differ. */
export const MAY_DIFFER = {
  camera: 'the camera body',
  mode: 'the picture format',
  lens: 'the lens',
  distance: 'how far the camera stands',
  stop: 'the stop',
  rate: 'the frame rate',
  shutter: 'the exposure time',
  index: 'the exposure index',
  lighting: 'the set-up of the light',
} as const;

export const SHOT_FIELDS = {
  board: list({ shape: 'reference', to: 'board' }, 'Frames of the board it serves.'),
  deliverables: list({ shape: 'reference', to: 'deliverables' }, 'What it is cut into; the first frames it.'),
  action: record(
    {
      what: text('What happens.', 500),
      event: text('Its name in the event library, which then fills in what is not written here.', 60),
      parameters: map({ shape: 'figure', longest: 60 }, 'Figures of that event, where they are known better.'),
      duration: measured('duration_s', 'time', 'How long it lasts on the set.'),
      speed: measured('speed_m_per_s', 'speed', 'Its fastest movement across the picture.'),
      width: quantity('reachWidth_m', 'length', 'How wide it reaches.'),
      height: quantity('reachHeight_m', 'length', 'How high it reaches.'),
      towardsLens: quantity('reachTowardsLens_m', 'length', 'How far anything flies towards the lens.', { zero: true }),
    },
    'What must be filmed.',
  ),
  screenTime: quantity('screenTime_s', 'time', 'How long it lasts on screen.'),
  speed: record(
    {
      constant: number('constantFraction', 'ratio', 'One playback speed throughout; 1/40 is forty times slower.', { least: 1e-6, most: 100 }),
      knots: list(KNOT, 'Playback speed at moments of screen time.', 100),
      between: choice('How speed goes from knot to knot.', {
        linear: 'evenly in speed',
        smooth: 'easing in and out',
        geometric: 'evenly in ratio, as the eye judges it',
      }),
    },
    'Playback speed, where it is set rather than worked out.',
  ),
  handles: quantity('handles_s', 'time', 'Real time kept before and after the action.', { zero: true }),
  frameWidth: quantity('frameWidth_m', 'length', 'Width of the scene across the first deliverable.'),
  reframe: number('reframeFraction', 'fraction', 'Share of the picture held back for repositioning.', { least: 0, most: 0.9 }),
  seen: choice('How the subject is lit, and so what its light is read as.', {
    'lit-on': 'light falls on it: illuminance',
    'lit-through': 'light comes through it: luminance of what is behind',
    'by-reflection': 'it mirrors something: luminance of what is mirrored',
  }),
  readingStandsFor: quantity('readingOffset_stops', 'stops', 'How far above middle grey the metered tone should lie.'),
  depth: quantity('depth_m', 'length', 'Depth that must be sharp.'),
  blur: quantity('blur_px', 'pixels', 'Movement blur allowed, in pixels of the first deliverable.'),
  unsharpness: quantity('unsharpness_px', 'pixels', 'Blur circle still called sharp, in pixels of the first deliverable.'),
  diffraction: quantity('diffraction_px', 'pixels', 'Diffraction disc allowed, in pixels of the first deliverable.'),
  signalToNoise: quantity('signalToNoise_dB', 'decibels', 'Signal over noise wanted at middle grey.'),
  highlights: quantity('highlights_stops', 'stops', 'Room wanted above middle grey.'),
  clearance: quantity('clearance_m', 'length', 'Distance wanted from the front of the lens to the subject.', { zero: true }),
  rate: rate('Capture rate, where it is fixed.'),
  shutter: shutter('Shutter, where it is fixed; as a time or as an angle.'),
  stop: quantity('stop', 'tStop', 'Stop, where it is fixed.'),
  index: number('isoSpeed', 'isoSpeed', 'Exposure index, where it is fixed.'),
  camera: reference('kit.cameras', 'Camera, where it is fixed.'),
  mode: text('Mode of that camera, where it is fixed.'),
  lens: reference('kit.lenses', 'Lens, where it is fixed.'),
  attachments: list({ shape: 'reference', to: 'kit.attachments' }, 'What is fitted to the lens.', 20),
  lighting: reference('lighting', 'The set-up that lights it.'),
  azimuth: quantity('azimuth_deg', 'angle', 'Where the camera stands, turned about the subject; 0 in front, 90 to its right.', { least: -360 }),
  elevation: quantity('elevation_deg', 'angle', 'How far above the level of the subject it looks from.', { least: -90, most: 90 }),
  hero: record(
    {
      product: reference('kit.products', 'What is eaten, poured or broken.'),
      perTake: number('perTakeCount', 'count', 'Pieces that one take uses.', { least: 0, most: 10_000 }),
      life: measured('life_s', 'time', 'How long it lasts under the light.'),
      lightOn: measured('lightOn_s', 'time', 'Light-on time of one take, focus and rehearsal included.'),
    },
    'The product, and how long it lasts.',
  ),
  good: number('goodTakeFraction', 'fraction', 'Share of takes that come out good; left out, kept over takes.'),
  takes: number('takeCount', 'count', 'Takes planned.', { least: 1, most: 10_000 }),
  kept: number('keptTakeCount', 'count', 'Takes saved.', { least: 0, most: 10_000 }),
  elements: list({ shape: 'text', longest: 200 }, 'Passes of this set-up that must match, such as a clean plate.', 50),
  matches: reference('shots', 'The shot whose picture this one must match, where it is a plate or an element for it.'),
  mayDiffer: list({ shape: 'choice', words: MAY_DIFFER }, 'What may differ from the shot that it matches.', 20),
  references: list({ shape: 'text', longest: 200 }, 'Reference rolls owed, such as a grey card.', 50),
  rigs: list({ shape: 'reference', to: 'kit.rigs' }, 'Rigs it fires.', 50),
  after: list({ shape: 'reference', to: 'shots' }, 'Shots that must be done before it.', 100),
  cautions: list({ shape: 'text', longest: 500 }, 'What can hurt somebody.', 50),
} as const; // prettier-ignore

export const SHOT = recordShape({ title: TITLE, note: NOTE, ...SHOT_FIELDS });
export const DEFAULTS = recordShape(SHOT_FIELDS);

const DRIVE = recordShape({
  ...KIT_ITEM,
  capacity: quantity('capacity_B', 'bytes', 'What it holds.'),
  used: quantity('used_B', 'bytes', 'What is on it already.', { zero: true }),
  writeRate: measured('writeRate_B_per_s', 'byteRate', 'How fast it writes for long.'),
});

/** What people on the set look after. */
export const DUTIES = {
  production: 'the day and the client',
  camera: 'camera, lens and focus',
  light: 'lamps and power',
  rigs: 'rigs and triggers',
  product: 'the product and its pieces',
  data: 'saving and copying',
} as const;

export type Duty = keyof typeof DUTIES;

export const SHOOT = recordShape({
  longsecond: number('version', 'count', 'Version of this form.', { least: 1, most: 1 }),
  shoot: record(
    {
      title: TITLE,
      place: text('Where.', 500),
      timeZone: text('Time zone by its IANA name, such as Europe/Lisbon.', 60),
      mains: record(
        {
          voltage: quantity('voltage_V', 'voltage', 'Mains voltage.'),
          frequency: quantity('frequency_Hz', 'frequency', 'Mains frequency.'),
          phases: number('phaseCount', 'count', 'Phases.', { least: 1, most: 3 }),
        },
        'The supply.',
      ),
      seed: number('seedCount', 'count', 'Starts every random draw, so that a plan can be made again.', { most: 4294967295 }),
      units: choice('How lengths and light are shown.', { metric: 'metres and lux', imperial: 'feet and footcandles' }),
      meterConstant: quantity('meterConstant_lx_s', 'exposure', 'Constant of the incident meter; 250 lx·s for a flat receptor, 340 lx·s in use with a dome.', { least: 200, most: 600 }),
      day: record(
        {
          date: text('Which day.', 40),
          call: clock('callTime_s', 'When work starts.'),
          wrap: clock('wrapTime_s', 'When it must end.'),
          meals: list({ shape: 'clock' }, 'When meals start.', 10),
        },
        'The day; times after midnight run on as 24:00 to 35:59.',
      ),
    },
    'What is shot, where and when.',
  ),
  crew: map(
    recordShape({
      title: text('The person’s name.'),
      does: list({ shape: 'choice', words: DUTIES }, 'What they look after.', 10),
      note: NOTE,
    }),
    'Who is on the set, and what each looks after.',
  ),
  deliverables: map(
    recordShape({
      title: TITLE,
      rate: rate('Frames a second when it plays.'),
      pixels: size('pixels', 'Pixels across and down.'),
      length: quantity('length_s', 'time', 'How long it runs.'),
      safe: number('safeFraction', 'fraction', 'Share of the picture that is sure to be seen.'),
      note: NOTE,
    }),
    'What is handed over.',
  ),
  board: map(
    recordShape({
      title: TITLE,
      words: text('What the frame tells.', 2000),
      seconds: quantity('screenTime_s', 'time', 'Seconds in the film.'),
      picture: reference('files', 'Its picture.'),
    }),
    'Frames of the storyboard.',
  ),
  order: record(
    {
      board: list({ shape: 'reference', to: 'board' }, 'Board frames in the order of the film.'),
      shots: list({ shape: 'reference', to: 'shots' }, 'Shots in the order people read them.'),
    },
    'Order of what is kept under ids; entries left out follow in the order written.',
  ),
  kit: record(
    {
      cameras: map(CAMERA, 'Camera bodies.'),
      lenses: map(LENS, 'Lenses.'),
      attachments: map(ATTACHMENT, 'Tubes, filters and glasses.'),
      lamps: map(LAMP, 'Lamps.'),
      modifiers: map(recordShape({ ...KIT_ITEM, loss: quantity('loss_stops', 'stops', 'Light it costs.', { least: 0 }) }), 'Diffusion, scrims and gels.'),
      cables: map(recordShape({ ...KIT_ITEM, length: quantity('length_m', 'length', 'Length.') }), 'Cables.'),
      circuits: map(recordShape({ ...KIT_ITEM, rating: quantity('rating_A', 'current', 'Rating of its breaker.') }), 'Circuits.'),
      rigs: map(recordShape({ ...KIT_ITEM, latency: measured('latency_s', 'time', 'From signal to movement.', { zero: true }) }), 'Rigs.'),
      products: map(recordShape({ ...KIT_ITEM, pieces: number('pieceCount', 'count', 'Camera-ready pieces on hand.') }), 'Products.'),
      liquids: map(recordShape({ ...KIT_ITEM, density: quantity('density_kg_per_m3', 'density', 'Density.'), viscosity: quantity('viscosity_Pa_s', 'viscosity', 'Viscosity.') }), 'Liquids.'),
      drives: map(DRIVE, 'Drives that recordings are saved to.'),
      links: map(recordShape({ ...KIT_ITEM, rate: measured('rate_B_per_s', 'byteRate', 'What it carries.') }), 'Links between camera and drives.'),
    },
    'Everything there is to shoot with.',
  ),
  lighting: map(SETUP, 'Set-ups of the light.'),
  defaults: { readAs: '', of: DEFAULTS, says: 'What a shot has where it does not say otherwise.' },
  shots: map(SHOT, 'The shots.'),
  files: map(
    recordShape({
      name: text('File name.', 255),
      sha256: text('Its hash.', 64),
      size: quantity('size_B', 'bytes', 'Its size.', { zero: true }),
      kind: text('What it is.', 60),
    }),
    'Files that belong to the shoot.',
  ),
}); // prettier-ignore

export type Shoot = ReadOf<typeof SHOOT>;
export type Shot = ReadOf<typeof SHOT>;
export type ShotDefaults = ReadRecord<typeof SHOT_FIELDS>;
export type Camera = ReadOf<typeof CAMERA>;
export type Mode = ReadOf<typeof MODE>;
export type Lens = ReadOf<typeof LENS>;
export type Attachment = ReadOf<typeof ATTACHMENT>;
export type Lamp = ReadOf<typeof LAMP>;
export type PlacedLamp = ReadOf<typeof PLACED_LAMP>;
export type LightingSetup = ReadOf<typeof SETUP>;
