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
  rowTime: quantity('rowTime_s', 'time', 'From the start of one row to the start of the next, where rows are exposed one after another.'),
  link: reference('kit.links', 'What its recordings leave it over.'),
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

/** How the light of a lamp changes within a period, family by family. */
export const WAVEFORM_KINDS = {
  steady: 'light that does not change',
  tungsten: 'a filament on the mains, dimmed by its own slow cooling',
  magnetic: 'an arc on a magnetic ballast',
  square: 'an arc on an electronic square-wave ballast',
  fluorescent: 'a fluorescent tube on a magnetic ballast',
  'electronic-tube': 'a fluorescent tube on an electronic ballast',
  'led-steady': 'light-emitting diodes on a steady current',
  'led-ripple': 'light-emitting diodes whose driver lets the mains through',
  'led-pulses': 'light-emitting diodes dimmed by pulses',
  'led-interleaved': 'light-emitting diodes in channels pulsed in turn',
} as const;

const WAVEFORM = {
  kind: choice('How its light changes within a period.', WAVEFORM_KINDS),
  rate: quantity('ownRate_Hz', 'frequency', 'Its own rate: of the pulses, or of the square wave of its ballast.'),
  depth: number('depthFraction', 'fraction', 'How far it swings: brightest less dimmest over their sum.', { least: 0 }),
  shape: choice('Form of a ripple.', { sine: 'a sine', rectified: 'a rectified sine' }),
  duty: number('dutyFraction', 'fraction', 'Share of each pulse that is lit.'),
  low: number('lowFraction', 'fraction', 'What is left of the light between pulses.', { least: 0 }),
  channels: number('channelCount', 'count', 'Channels pulsed in turn.', { least: 2, most: 64 }),
  floor: number('floorFraction', 'fraction', 'Least light of an arc in a half cycle, over its most.', { least: 0 }),
  exponent: number('shapeFactor', 'ratio', 'How peaked the half cycles of an arc are; 1 is a rectified sine.', {
    least: 0.1,
    most: 10,
  }),
  imbalance: number('imbalanceFraction', 'fraction', 'How far its two half cycles differ.', { least: 0 }),
  notch: number('notchFraction', 'fraction', 'How far the light drops at each change of sign.', { least: 0 }),
  recovery: quantity('recovery_s', 'time', 'How fast it comes back from that.'),
  lag: quantity('phosphorLag_s', 'time', 'How long its phosphor glows on.'),
  supply: quantity('lampSupply_V', 'voltage', 'Voltage that its filament is made for.'),
};

/** A lamp's light over time as somebody measured it; it holds for that level, colour and supply only. */
export const MEASURED_WAVEFORM = recordShape({
  title: TITLE,
  note: NOTE,
  file: reference('files', 'Time and light as CSV, a line a sample.'),
  level: number('levelFraction', 'fraction', 'Share of its full light that it was measured at; left out, full.'),
  colour: quantity(
    'colourTemperature_K',
    'colourTemperature',
    'Colour setting that it was measured at; left out, as the lamp is written.',
  ),
  supply: choice('What it ran on.', { grid: 'the public grid', generator: 'a generator', battery: 'a battery' }),
  ownRate: flag('hasOwnRate', 'It keeps a rate of its own rather than the mains’.'),
});

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
  waveform: record(WAVEFORM, 'How its light changes within a period; what is left out is taken as usual for its kind.'),
  measured: map(MEASURED_WAVEFORM, 'Its light over time as it was measured, each for one level, colour and supply.'),
  warmUp: quantity('warmUp_s', 'time', 'From lit to steady light.', { zero: true }),
  restrike: quantity('restrike_s', 'time', 'From put out to when it can be lit again.', { zero: true }),
  drift: quantity('drift_stops', 'stops', 'How far its light still changes in an hour once it is steady.', { least: 0 }),
}); // prettier-ignore

/** Angles from the axis beyond which a door cuts the light of a lamp. */
const DOORS = {
  left: quantity('doorLeft_deg', 'angle', 'Cut on the left, looking along the axis.', { zero: true, most: 90 }),
  right: quantity('doorRight_deg', 'angle', 'Cut on the right.', { zero: true, most: 90 }),
  top: quantity('doorTop_deg', 'angle', 'Cut above.', { zero: true, most: 90 }),
  bottom: quantity('doorBottom_deg', 'angle', 'Cut below.', { zero: true, most: 90 }),
};

/** Something flat that keeps light off: it stands square to the line from its middle to what it faces. */
export const FLAG = recordShape({
  title: TITLE,
  note: NOTE,
  at: position('Where its middle stands.'),
  faces: position('A place that it is square to; left out, the subject point.'),
  width: quantity('flagWidth_m', 'length', 'Across it, level.', { most: 20 }),
  height: quantity('flagHeight_m', 'length', 'Up it.', { most: 20 }),
  off: flag('isOff', 'Taken away.'),
});

export const PLACED_LAMP = recordShape({
  title: TITLE,
  note: NOTE,
  lamp: reference('kit.lamps', 'Which lamp it is.'),
  at: position('Where its front stands: right of, away from and above the subject point.'),
  aim: position('What its axis points at; left out, the subject point.'),
  flood: number('floodFraction', 'fraction', 'From spot, 0, to flood, 1.', { least: 0 }),
  level: number('levelFraction', 'fraction', 'Share of its full light.', { least: 0 }),
  modifiers: list({ shape: 'reference', to: 'kit.modifiers' }, 'Diffusion, scrims and gels in front of it.', 20),
  doors: record(DOORS, 'Its barn doors, by where they cut.'),
  colour: quantity('colourTemperature_K', 'colourTemperature', 'Its colour setting; left out, as the kit says.'),
  phase: number('mainsPhaseCount', 'count', 'Which phase of the mains feeds it; left out, the first.', {
    least: 1,
    most: 3,
  }),
  share: number(
    'shareFraction',
    'fraction',
    'Share of the light at the subject that is its, as read; where left out it is worked out.',
    { least: 0 },
  ),
  off: flag('isOff', 'Not lit.'),
});

export const SETUP = recordShape({
  title: TITLE,
  note: NOTE,
  lamps: map(PLACED_LAMP, 'The lamps that light it; what they give is worked out where nothing was read.'),
  flags: map(FLAG, 'What keeps light off.'),
  faces: position('A place that the lit surface faces, such as that of a lamp behind; left out, the camera.'),
  illuminance: measured('illuminance_lx', 'illuminance', 'Incident light at the subject point, on the surface that counts.'),
  luminance: measured('luminance_cd_per_m2', 'luminance', 'Brightness of the surface seen through, or mirrored in, the subject.'),
  reading: choice('Where the figures come from.', { metered: 'read on the set', stated: 'intended, not yet read' }),
}); // prettier-ignore

/** What fires, lets go or moves. */
export const RIG = recordShape({
  ...KIT_ITEM,
  kind: choice('What it is worked by.', {
    relay: 'a relay',
    latch: 'a spring latch with a solenoid',
    solenoid: 'a direct-acting solenoid',
    valve: 'a fast valve',
    pneumatic: 'compressed air',
    motor: 'a motor, rail or arm',
    person: 'a hand, on a count',
  }),
  latency: measured('latency_s', 'time', 'From signal to movement.', { zero: true }),
  jitter: quantity('jitter_s', 'time', 'How far that varies from time to time, one standard deviation.', {
    zero: true,
  }),
  reload: measured('reload_s', 'time', 'Making it ready again.', { zero: true }),
  measured: flag('isMeasured', 'Its latency and jitter were measured on the set.'),
  firings: number('firingCount', 'count', 'Firings by which they were measured; thirty where nobody says.', {
    least: 1,
    most: 10_000,
  }),
  arms: reference('crew', 'Who arms it.'),
  clears: reference('crew', 'Who calls that everybody stands clear.'),
  disarm: text('What makes it safe.', 500),
  shield: text('What stands between it and people.', 500),
});

/** What one rig sets going in a shot, and when it must arrive. */
export const CUE = recordShape({
  title: TITLE,
  note: NOTE,
  rig: reference('kit.rigs', 'The rig that it fires.'),
  does: choice('What the rig sets going.', {
    acts: 'it acts where it is',
    falls: 'something falls',
    flies: 'something is thrown',
    swings: 'something swings on an arm',
    pours: 'something is poured',
    moves: 'something moves from rest to rest',
    lights: 'lamps come up',
  }),
  height: quantity('fallHeight_m', 'length', 'How far it falls, or a pour drops.', { most: 100 }),
  distance: quantity('travel_m', 'length', 'How far it flies, straight from where it leaves, or how far it moves.', {
    most: 100,
  }),
  speed: measured('launchSpeed_m_per_s', 'speed', 'How fast it leaves, or moves at most.'),
  acceleration: quantity('acceleration_m_per_s2', 'acceleration', 'How fast a move gathers speed.'),
  angle: quantity('launchAngle_deg', 'angle', 'How far above level it is thrown.', { least: -90, most: 90 }),
  arm: quantity('arm_m', 'length', 'Length of the arm that it swings on.', { most: 20 }),
  swing: quantity('release_deg', 'angle', 'From hanging straight down to where it is let go.', { most: 179 }),
  diameter: quantity('diameter_m', 'length', 'Its size, where the air slows it.', { most: 10 }),
  density: quantity('density_kg_per_m3', 'density', 'Its density, where the air slows it.'),
  travel: measured('travelTime_s', 'time', 'From movement to arrival, where it was measured.', { zero: true }),
  place: quantity('placeSpread_m', 'length', 'How far its place of release varies, one standard deviation.', {
    zero: true,
  }),
  meets: quantity('arrival_s', 'time', 'When it must arrive, after the meeting; negative before.', {
    least: -3600,
    zero: true,
  }),
  settle: quantity('settle_s', 'time', 'Rest that it needs after arriving, before that moment.', { zero: true }),
  apart: flag('isApart', 'It need not meet the others.'),
});

/** What tells the camera which part of its memory to keep. */
const TRIGGER = {
  by: choice('What triggers the camera.', {
    person: 'a hand on a button',
    electric: 'the signal that fires the rigs',
    beam: 'a light gate',
    sound: 'a sound',
    contact: 'a contact',
    picture: 'a change in the picture',
  }),
  answers: quantity('triggerCue_s', 'time', 'When what it answers happens, after the action starts; negative before.', {
    least: -3600,
    zero: true,
  }),
  latency: measured('triggerLatency_s', 'time', 'From that to the trigger.', { zero: true }),
  jitter: quantity('triggerJitter_s', 'time', 'How far that varies, one standard deviation.', { zero: true }),
  post: number('postTriggerFraction', 'fraction', 'Share of the memory kept after the trigger, where it is fixed.', {
    least: 0,
  }),
  early: number('falseFireFraction', 'fraction', 'How often it fires of its own before the action.', { least: 0 }),
  never: number('noFireFraction', 'fraction', 'How often it does not fire.', { least: 0 }),
};

export const KNOT = recordShape({
  at: quantity('screenTime_s', 'time', 'Time on screen.', { zero: true }),
  speed: number('speedFraction', 'ratio', 'Playback speed there; 1 is real time.', { least: 1e-6, most: 100 }),
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

/** One job between takes. */
export const RESET_JOB = recordShape({
  title: TITLE,
  by: choice('Whose work it is; two jobs of one hand are done one after the other.', DUTIES),
  time: measured('duration_s', 'time', 'How long it takes.', { zero: true }),
  after: list({ shape: 'text', longest: 60 }, 'Jobs of this reset that must be done before it.', 20),
  uses: reference('kit.products', 'What it uses up.'),
  pieces: number('pieceCount', 'count', 'How many of it.', { most: 10_000 }),
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
  cues: map(CUE, 'What each rig sets going, and when it must arrive.'),
  meeting: record(
    {
      tolerance: quantity('meetingTolerance_s', 'time', 'Time within which all must arrive.'),
      at: quantity('meetingAt_s', 'time', 'When they meet, after the action starts; left out, half way.', { zero: true }),
      chance: number('meetingChanceFraction', 'fraction', 'Share of takes in which that should happen.'),
    },
    'The moment at which they meet.',
  ),
  trigger: record(TRIGGER, 'What tells the camera which part of its memory to keep.'),
  catch: number('catchFraction', 'fraction', 'Share of takes in which the memory should hold the whole action.'),
  flicker: quantity('flickerAllowed_stops', 'stops', 'Swing of the light from frame to frame allowed.', { least: 1e-4 }),
  reset: map(RESET_JOB, 'Jobs between takes.'),
  times: record(
    {
      set: measured('setTime_s', 'time', 'Building or changing the set for it.', { zero: true }),
      safety: measured('safetyTime_s', 'time', 'Safety call before each take.', { zero: true }),
      roll: measured('rollTime_s', 'time', 'Arming, counting in and rolling.', { zero: true }),
      review: measured('reviewTime_s', 'time', 'Looking at each take.', { zero: true }),
      reference: measured('referenceTime_s', 'time', 'Each reference roll.', { zero: true }),
      element: measured('elementTime_s', 'time', 'Each element or plate of this set-up.', { zero: true }),
    },
    'How long its steps take, where they differ from the day’s.',
  ),
  soFar: record(
    {
      takes: number('rolledCount', 'count', 'Takes rolled.', { most: 10_000 }),
      good: number('goodCount', 'count', 'Good takes among them.', { most: 10_000 }),
      done: flag('isDone', 'Nothing more is shot of it.'),
    },
    'What has been shot of it by now.',
  ),
  after: list({ shape: 'reference', to: 'shots' }, 'Shots that must be done before it.', 100),
  cautions: list({ shape: 'text', longest: 500 }, 'What can hurt somebody.', 50),
} as const; // prettier-ignore

export const SHOT = recordShape({ title: TITLE, note: NOTE, ...SHOT_FIELDS });
export const DEFAULTS = recordShape(SHOT_FIELDS);

/** Foods whose time under light is known well enough to be worked out. */
export const WARMS = {
  'ice-cream': 'ice cream',
  ice: 'clear ice',
  'dark-chocolate': 'dark chocolate',
  'milk-chocolate': 'milk chocolate',
  butter: 'butter',
} as const;

export const PRODUCT = recordShape({
  ...KIT_ITEM,
  pieces: number('pieceCount', 'count', 'Camera-ready pieces on hand.'),
  warms: choice('What it warms and melts like; its time under the light is then worked out.', WARMS),
  start: quantity('start_degC', 'temperature', 'How warm it is when it comes to the set.'),
  thickness: quantity('thickness_m', 'length', 'Thickness of what must not change, such as a curl or a shell.', {
    most: 1,
  }),
  hold: measured('hold_s', 'time', 'How long it stays camera-ready once dressed, lights off.'),
});

const DRIVE = recordShape({
  ...KIT_ITEM,
  capacity: quantity('capacity_B', 'bytes', 'What it holds.'),
  used: quantity('used_B', 'bytes', 'What is on it already.', { zero: true }),
  writeRate: measured('writeRate_B_per_s', 'byteRate', 'How fast it writes for long.'),
  readRate: measured('readRate_B_per_s', 'byteRate', 'How fast it reads for long; left out, as it writes.'),
  link: reference('kit.links', 'What it hangs on.'),
  holds: choice('What is kept on it.', { saves: 'what leaves the camera', copies: 'copies' }),
});

export const SHOOT = recordShape({
  longsecond: number('version', 'count', 'Version of this form.', { least: 1, most: 1 }),
  shoot: record(
    {
      title: TITLE,
      place: text('Where.', 500),
      air: quantity('air_degC', 'temperature', 'How warm the air on the set is.'),
      timeZone: text('Time zone by its IANA name, such as Europe/Lisbon.', 60),
      mains: record(
        {
          voltage: quantity('voltage_V', 'voltage', 'Mains voltage.'),
          frequency: quantity('frequency_Hz', 'frequency', 'Mains frequency.'),
          phases: number('phaseCount', 'count', 'Phases.', { least: 1, most: 3 }),
          supply: choice('Where it comes from.', { grid: 'the public grid', generator: 'a generator' }),
          drift: quantity('drift_Hz', 'frequency', 'How far its frequency may be off.', { zero: true }),
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
          mealLength: quantity('mealLength_s', 'time', 'How long a meal lasts.'),
          mealWithin: quantity('mealWithin_s', 'time', 'Longest work without a meal.'),
          overtimePrice: number('overtimePrice', 'ratio', 'What an hour after the wrap costs.', { least: 0 }),
          copies: number('copyCount', 'count', 'Verified copies wanted of each recording.', { most: 5 }),
          now: clock('nowTime_s', 'What time it is, to plan the rest of the day again.'),
          usual: record(
            {
              set: measured('setTime_s', 'time', 'Building or changing a set.', { zero: true }),
              light: measured('lightTime_s', 'time', 'Changing the light.', { zero: true }),
              camera: measured('cameraTime_s', 'time', 'Changing the camera body.', { zero: true }),
              lens: measured('lensTime_s', 'time', 'Changing the lens.', { zero: true }),
              mode: measured('modeTime_s', 'time', 'Changing the picture format.', { zero: true }),
              reset: measured('resetTime_s', 'time', 'A reset between takes.', { zero: true }),
              safety: measured('safetyTime_s', 'time', 'Safety call before each take.', { zero: true }),
              roll: measured('rollTime_s', 'time', 'Arming, counting in and rolling.', { zero: true }),
              review: measured('reviewTime_s', 'time', 'Looking at each take.', { zero: true }),
              reference: measured('referenceTime_s', 'time', 'A reference roll.', { zero: true }),
              element: measured('elementTime_s', 'time', 'An element or plate of a set-up.', { zero: true }),
            },
            'How long things usually take on this day.',
          ),
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
      day: list({ shape: 'reference', to: 'shots' }, 'Shots in the order they are shot, where it is fixed.'),
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
      rigs: map(RIG, 'Rigs.'),
      products: map(PRODUCT, 'Products.'),
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
export type LampWaveform = Lamp['waveform'];
export type MeasuredLamp = ReadOf<typeof MEASURED_WAVEFORM>;
export type Flag = ReadOf<typeof FLAG>;
export type Rig = ReadOf<typeof RIG>;
export type Cue = ReadOf<typeof CUE>;
export type Product = ReadOf<typeof PRODUCT>;
export type ResetJob = ReadOf<typeof RESET_JOB>;
export type Day = Shoot['shoot']['day'];
export type LightingSetup = ReadOf<typeof SETUP>;
