/** Help for every limit of a plan: what it is, why it matters, what can be done. Screens and the command print these. */
import type { LimitId } from '../plan/types.ts';

export interface LimitHelp {
  readonly what: string;
  readonly why: string;
  /** Only what the ways of a plan do, or what a field of the shot is for. */
  readonly can: string;
  /** Ids of the laws behind its figures, nearest first; none where two written figures are compared. */
  readonly laws: readonly string[];
}

export const LIMIT_HELP: Readonly<Record<LimitId, LimitHelp>> = {
  'frame-rate': {
    what: 'The frame rate that the slow motion asks for, against the fastest the camera runs in its format.',
    why: 'Too few frames for the time on screen, and the shot plays shorter or must be padded with made-up frames.',
    can: 'Play it for less time or less slowly, record a format with fewer rows, or use another camera body.',
    laws: ['capture-rate-wanted', 'capture-rate-at-speed', 'frame-rate-by-rows'],
  },
  'screen-time': {
    what: 'How long the action lasts on screen at this rate and speed, against the seconds the film gives it.',
    why: 'A shot that ends before its cut point leaves the edit with nothing to show.',
    can: 'Slow it down further, ask for less time on screen, or let a fixed frame rate be worked out again.',
    laws: ['screen-time', 'time-expansion'],
  },
  shutter: {
    what: 'The shutter that was fixed, against the time one frame leaves for it and the shortest the camera makes.',
    why: 'A shutter cannot stay open longer than its frame, nor open for less than the camera can.',
    can: 'Set one that fits, or let the shutter be worked out.',
    laws: ['longest-exposure', 'shutter-time', 'shutter-angle'],
  },
  'stop-range': {
    what: 'The stop that was fixed, against the widest and the narrowest marked on the lens.',
    why: 'A stop that the ring does not have cannot be set, and every figure that rests on it is wrong.',
    can: 'Set the nearest stop that the lens has, or let the stop be worked out.',
    laws: ['t-stop', 'stops-between-apertures'],
  },
  'index-range': {
    what: 'The exposure index that was fixed, against the range the camera allows.',
    why: 'Beyond the range the camera does not offer it, and what it would do to the picture is not known.',
    can: 'Set an index within the range, or let it be worked out.',
    laws: ['index-needed', 'exposure-index'],
  },
  light: {
    what: 'The light that the set-up reads, against what this shutter, stop and index need to expose middle grey.',
    why: 'Short by one stop is a picture half as bright as meant; lifting it afterwards lifts the noise too.',
    can: 'Bring more light, accept more blur, less depth or more noise, open the shutter, take off a filter, or use a faster lens or camera.',
    laws: ['light-needed-close-up', 'luminance-needed-close-up', 'close-up-factor'],
  },
  highlights: {
    what: 'Stops left above middle grey before the brightest parts clip, against the room that was asked for.',
    why: 'What has clipped is gone: white foam, wet edges and the lamp’s mirror image lose all their shape.',
    can: 'Ask for less room, accept more noise so that the index may rise, fit a filter, or use another camera body.',
    laws: ['highlight-room', 'lowest-index'],
  },
  noise: {
    what: 'Signal over noise at middle grey at this index, against the ratio that was asked for.',
    why: 'Grain that crawls shows most where a shot is slow, dark and plain, and compresses badly.',
    can: 'Bring more light, accept more noise, blur or less depth, ask for less room for highlights, or record a binned format.',
    laws: ['mid-grey-noise', 'index-at-noise'],
  },
  depth: {
    what: 'How deep a slice of the set is sharp at this stop, against the depth that must be.',
    why: 'Close up the slice is a few millimetres: what leaves it goes soft in the middle of the shot.',
    can: 'Ask for less depth, frame wider, close a stop that was fixed, or use another lens.',
    laws: ['depth-of-field', 'stop-for-depth'],
  },
  blur: {
    what: 'How far the fastest part moves while the shutter is open, in pixels of the first deliverable.',
    why: 'Slow motion shows each frame for long: smeared edges are seen, not felt.',
    can: 'Accept more blur, frame wider, or shorten a shutter that was fixed, or let it be worked out.',
    laws: ['motion-blur', 'exposure-for-blur'],
  },
  diffraction: {
    what: 'The disc that every point becomes at this stop, in pixels of the first deliverable.',
    why: 'Past a certain stop closing further gains depth and loses sharpness everywhere.',
    can: 'Ask for less depth so that the stop can open, accept a larger disc, open a stop that was fixed, or record another format.',
    laws: ['airy-diameter-in-pixels', 'stop-at-airy'],
  },
  'picture-size': {
    what: 'Pixels across each crop after windowing and repositioning, against the pixels to be delivered.',
    why: 'A crop with fewer pixels than its delivery must be enlarged, and its detail is made up.',
    can: 'Record a larger format, hold back less to reframe, use another body, or leave that deliverable out of this shot.',
    laws: ['crop-width', 'enlargement'],
  },
  'in-the-picture': {
    what: 'How wide and high the action reaches about the subject point, against what each crop shows.',
    why: 'A splash that leaves the tall cut is lost there, however well the wide one holds it.',
    can: 'Frame wider, hold back less to reframe, or leave that deliverable out of this shot.',
    laws: ['field-at-crop', 'crop-width', 'crop-height'],
  },
  coverage: {
    what: 'The image circle of the lens, against the diagonal of the recorded picture on the sensor.',
    why: 'Outside the circle the corners fall off to black.',
    can: 'Record a smaller format or use a lens with a larger circle.',
    laws: ['image-circle-needed', 'window-diagonal'],
  },
  focus: {
    what: 'The distance this frame width asks for, against how near the lens focuses; with tubes, how far as well.',
    why: 'Out of its range the lens cannot be focused on the subject at all.',
    can: 'Frame wider, fit or take off a tube, use another lens, or record another format.',
    laws: ['sensor-to-subject', 'lens-extension', 'magnification'],
  },
  clearance: {
    what: 'From the front of the lens to the subject, against the clearance asked for and how far the action flies towards the lens.',
    why: 'What reaches the glass ends the take and can break the lens. It is room for the lens, not for a face.',
    can: 'Use a longer lens, frame wider, or make do with less clearance where the action itself stays clear.',
    laws: ['working-distance', 'sensor-to-subject'],
  },
  buffer: {
    what: 'How long the camera’s memory holds at this rate and format, against the action with its handles.',
    why: 'When memory is full the start of the take is overwritten, or the end is never recorded.',
    can: 'Keep shorter handles, play it for less time on screen, record a smaller format, or use another body.',
    laws: ['record-time', 'frame-size'],
  },
  flicker: {
    what: 'How far the light of the frames swings as the lamps ripple, at the worst moment to start, against the swing allowed.',
    why: 'A take that pulses is a take lost, and on the set no eye can see it: it shows when the frames play slowly.',
    can: 'Open the shutter for whole periods of the ripple, lock the rate to it, use steadier lamps, split them over the phases, or allow more and repair it later.',
    laws: ['exposed-ripple', 'screen-flicker', 'null-shutter'],
  },
  'trigger-catch': {
    what: 'How often the memory holds the whole action with its handles when the trigger comes as it does, against how often it should.',
    why: 'The memory keeps seconds: a trigger early or late loses the head or the tail of a take that cannot be seen again.',
    can: 'Set the trigger elsewhere in the memory, trigger by the signal that fires the rigs, keep shorter handles, or record a smaller format.',
    laws: ['trigger-catch', 'best-trigger-setting', 'trigger-room'],
  },
  meeting: {
    what: 'How often everything arrives within the time allowed, against how often it should.',
    why: 'Things that must meet in the air each vary by milliseconds; every take that misses costs a reset and heroes.',
    can: 'Use the rig that varies least, measure the one that counts most, allow more time, or plan more takes.',
    laws: ['pair-meets', 'three-meet', 'rigs-meet', 'arrival-spread', 'spread-to-meet', 'fire-offset'],
  },
  'eye-distance': {
    what: 'How near people work to the brightest lamp, against the distance from which it may be looked at for as long as they do.',
    why: 'Bright sources hurt eyes before anyone feels it. This is an alert, not an assessment: a qualified person judges it.',
    can: 'Take the lamp back, dim it, or put diodes where a hot lamp stands; until then backs to it and hands in only while it is down.',
    laws: ['blue-light-distance', 'irradiance-distance', 'infrared-eye-limit', 'blue-radiance'],
  },
  'hero-life': {
    what: 'How long the product lasts under the light, as written or as its light makes credible at the shortest, against the light-on time of one take.',
    why: 'Ice melts, foam falls and leaves wilt before the camera rolls.',
    can: 'Light it for less of each take or for the roll alone, dim the lamps or take them back, or put diodes where hot lamps stand.',
    laws: ['product-under-light', 'lamp-heat'],
  },
  heroes: {
    what: 'Pieces of the product on hand, against what the takes will use on nine days in ten.',
    why: 'When the last good piece is gone the shot is over, whatever the day has left. The average is not enough: half of all days use more.',
    can: 'Bring more pieces, use fewer in each take, or save fewer good takes.',
    laws: ['takes-at-confidence', 'takes-on-average'],
  },
  storage: {
    what: 'Free space on the drives that are here, against all takes to be saved.',
    why: 'A drive that fills up stops the camera from emptying its memory, and the set waits.',
    can: 'Bring another drive, free one, save fewer takes, or keep shorter handles.',
    laws: ['kept-size', 'save-time'],
  },
  day: {
    what: 'Time from the call, or from now, to the wrap, against the work that is left: changing over, resets, takes, meals.',
    why: 'Enough on average is late on half of all days; the band shows what takes that fail do to the end.',
    can: 'Shoot in an order with fewer changes, keep fewer takes, put more hands to the resets, or leave a shot to another day.',
    laws: ['takes-on-average'],
  },
};
