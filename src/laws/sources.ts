/** The sources that laws cite. Made from docs/sources.yaml by `npm run sources`: edit that file, not this one. */

export interface Source {
  readonly title: string;
  /** opened: the text was read; excerpt: a part or a page quoting it; memory: not looked up; practice: no source. */
  readonly seen: 'opened' | 'excerpt' | 'memory' | 'practice';
}

export const SOURCES: Readonly<Record<string, Source>> = {
  'air-20c': { title: 'Tables of the properties of air at atmospheric pressure', seen: 'excerpt' },
  'airy-examples': { title: 'Worked diameters of the Airy disc, physics page', seen: 'excerpt' },
  'airy-guide': {
    title: 'Application note of an optics maker on the Airy disc, with a table for 520 nm',
    seen: 'opened',
  },
  'angle-of-view-diagonal': {
    title: 'Mailing-list answer of 1999 working out the diagonal angle of a 21 mm lens',
    seen: 'excerpt',
  },
  'angle-of-view-page': { title: 'Encyclopaedia article on the angle of view, with one worked angle', seen: 'excerpt' },
  'army-copy-course': {
    title: 'US Army correspondence course SS0512, Photography, bellows extension factor',
    seen: 'opened',
  },
  'binning-note': {
    title: "Image sensor consultant's note on binning in the charge, voltage and digital domains",
    seen: 'opened',
  },
  'blur-in-squares': { title: 'Blurs of defocus and diffraction added in squares', seen: 'practice' },
  'cie-vocabulary': {
    title: 'CIE S 017:2020, International lighting vocabulary, entry 17-24-063, Lambertian surface',
    seen: 'opened',
  },
  'cinema-containers': {
    title: 'Frame sizes and shapes of digital cinema and high-definition pictures, articles on aspect ratios',
    seen: 'excerpt',
  },
  'circles-per-diagonal': {
    title: "Comparison of formats by circles of confusion per diagonal, large-format photographer's page",
    seen: 'excerpt',
  },
  'clift-gauvin': {
    title: 'Drag coefficient of a sphere after Clift and Gauvin, The motion of particles in turbulent gas streams',
    seen: 'excerpt',
  },
  'close-up-textbook': {
    title: 'Photography textbook, chapter on exposure increase for close-up subjects',
    seen: 'excerpt',
  },
  'colour-hdri': {
    title: 'colour-hdri, module exposure.dsc, documentation examples and unit tests after ISO 12232:2006',
    seen: 'opened',
  },
  'diagonal-divisor': { title: 'The picture diagonal divided by 1500 as circle of confusion', seen: 'memory' },
  'dof-derivation': {
    title: 'Derivation of the depth-of-field equations with pupil magnification, optics pages',
    seen: 'excerpt',
  },
  'drop-frame-explained': {
    title:
      'Public explanations of drop-frame timecode, an algorithm with worked labels, and a forum thread on 60000/1001',
    seen: 'excerpt',
  },
  'ethernet-payload': { title: 'Wiki table of payload data rates of TCP over Ethernet', seen: 'opened' },
  'ev-table': {
    title: 'Table of illuminance and luminance by exposure value at ISO 100, encyclopaedia article on exposure value',
    seen: 'excerpt',
  },
  'extension-tubes': {
    title: 'Question and answer on extension tubes and magnification, photography forum',
    seen: 'excerpt',
  },
  'f-number-article': { title: 'Encyclopaedia article on the f-number', seen: 'excerpt' },
  'falling-with-drag': {
    title: 'Physics help page on a fall with quadratic air resistance, with a worked value beside the fall without air',
    seen: 'opened',
  },
  'field-angle-note': {
    title: 'Technical note on choosing lenses for line cameras, with the field angle at a magnification',
    seen: 'excerpt',
  },
  'footcandle-entry': { title: 'Encyclopaedia entry on the foot-candle', seen: 'opened' },
  'footcandle-note': {
    title: 'Weblog note on footcandles from T-stop, exposure index and shutter time',
    seen: 'opened',
  },
  'footcandle-rule': { title: 'Trade magazine article on choosing fixtures by their photometrics', seen: 'excerpt' },
  'footcandle-table': {
    title: "Film manual's table of footcandles by stop at exposure index 100 and 1/50 s",
    seen: 'memory',
  },
  'four-focal-lengths': {
    title: 'Worked proof that object and real image lie at least four focal lengths apart, physics exercise page',
    seen: 'excerpt',
  },
  'frame-rate-practice': { title: 'Arithmetic of frame rates, durations and sizes as crews do it', seen: 'practice' },
  'gunn-kinzer': {
    title: 'The terminal velocity of fall for water droplets in stagnant air, Journal of Meteorology 6, table 2',
    seen: 'excerpt',
  },
  'hyperfocal-algebra': {
    title: 'Depth of field solved by a computer algebra system, worked sheet of 2016',
    seen: 'excerpt',
  },
  'hyperfocal-army': {
    title: 'US Army correspondence course in still photography, learning event on the hyperfocal distance',
    seen: 'excerpt',
  },
  'hyperfocal-examples': { title: 'Two worked hyperfocal distances, formula pages', seen: 'excerpt' },
  'hyperfocal-page': { title: "Photographer's page on setting hyperfocal distances", seen: 'opened' },
  'hyperfocal-program': {
    title: 'Hyperfocal distance on a programmable pocket calculator, article with a worked example',
    seen: 'excerpt',
  },
  'ies-inverse-square': {
    title: 'IES, Definitions, entry 9.1.1, inverse square law, with its note on sources of finite size',
    seen: 'opened',
  },
  'image-circle-close': { title: 'Large-format forum, image circle at a magnification', seen: 'excerpt' },
  'index-rating': {
    title: 'Rating a camera above or below its base index moves middle grey and leaves clipping where it is',
    seen: 'practice',
  },
  'iso-12232': {
    title:
      'ISO 12232:2019, Photography, Digital still cameras, Determination of exposure index, ISO speed ratings, standard output sensitivity, and recommended exposure index',
    seen: 'excerpt',
  },
  'iso-2720': {
    title: 'ISO 2720:1974, Photography, General purpose photographic exposure meters (photoelectric type)',
    seen: 'memory',
  },
  'lens-tutorial': { title: 'Photographic lenses tutorial of a news group (1995)', seen: 'excerpt' },
  'lighting-textbook': {
    title: 'Open textbook on lighting for electricians, chapter on the inverse square law',
    seen: 'opened',
  },
  'machine-vision-blur': { title: 'Machine vision help pages on motion blur, with worked values', seen: 'opened' },
  'macro-depth-forum': {
    title: 'Macro photography forum, checking depth of field at five times life size',
    seen: 'excerpt',
  },
  'macro-depth-table': {
    title:
      'Table of depth of field by magnification and f-number, spreadsheet with a book on close-up photography for science',
    seen: 'excerpt',
  },
  'macro-formulas': { title: "Collected formulas for close-focus photography, photographer's page", seen: 'excerpt' },
  'magnification-tables': {
    title: 'Tables of frame width and magnification in the documentation of a focus-stacking program',
    seen: 'excerpt',
  },
  'meter-article': {
    title: 'Encyclopaedia article on the light meter, section on calibrated reflectance',
    seen: 'opened',
  },
  'meter-thread': {
    title: 'Photography forum, thread working the reflected-light meter equation through to the film plane',
    seen: 'opened',
  },
  'morsi-alexander': { title: 'Measured drag coefficients of spheres, Journal of Fluid Mechanics 55', seen: 'excerpt' },
  'nd-names': {
    title: 'Photography article comparing the names of neutral density filters, table of stops, densities and factors',
    seen: 'opened',
  },
  'nd-table': { title: 'Camera reference wiki, table of neutral densities and the stops they take', seen: 'opened' },
  'packed-pixels': { title: 'Linux media documentation, packed raw pixel formats', seen: 'opened' },
  'paper-exercise': { title: 'University optics exercise on the luminance of paper lit by 450 lx', seen: 'opened' },
  'pupil-blog': { title: "Photographer's articles on depth of field with pupil magnification", seen: 'excerpt' },
  'pupil-thread': {
    title: 'Photography forum, thread on the bellows factor of lenses with unequal pupils',
    seen: 'opened',
  },
  'ramp-thread': {
    title: "Film students' forum, thread on holding exposure through a change of frame rate",
    seen: 'opened',
  },
  'readout-notes': { title: "Camera makers' notes on readout timing and highest frame rate", seen: 'excerpt' },
  'sensor-noise-article': { title: 'Encyclopaedia article on image sensor formats, section on noise', seen: 'excerpt' },
  'sensor-regions': { title: 'Manuals of industrial cameras on regions of interest and binning', seen: 'excerpt' },
  'shutter-angle-table': {
    title: 'Trade magazine article on shutter speed and shutter angle, table at 24 fps',
    seen: 'opened',
  },
  'shutter-formula': {
    title: 'Encyclopaedia article on shutter speed, section on the cinematographic shutter formula',
    seen: 'excerpt',
  },
  'shutter-thread': {
    title: 'Cinematography forum, thread on frame rate, shutter angle and exposure time',
    seen: 'opened',
  },
  smoothstep: { title: 'Reference pages on the smoothstep function', seen: 'opened' },
  'smpte-12-1': { title: 'SMPTE ST 12-1, Time and control code', seen: 'memory' },
  'smpte-12-3': {
    title: 'SMPTE ST 12-3, Time code for high frame rate signals and formatting in the ancillary data space',
    seen: 'memory',
  },
  'stop-series-thread': {
    title: 'Large-format photography forum, thread on computing intermediate stops',
    seen: 'opened',
  },
  'sunlight-thread': { title: 'Photography forum, thread quoting measured daylight in footcandles', seen: 'opened' },
  't-number-dictionary': { title: 'Photography dictionary, entry on the T-number', seen: 'opened' },
  'thin-lens-bellows': {
    title: "Worked examples of bellows draw, distance and magnification, a large-format photographer's page",
    seen: 'opened',
  },
  'two-pixels': { title: 'Two pixels as the largest blur that passes for sharp', seen: 'practice' },
  'white-light-efficacy': {
    title: 'Maximum spectral luminous efficacy of white light, Journal of Applied Physics 111, 104909',
    seen: 'excerpt',
  },
};

/** Whether a figure resting on these sources alone is assumed: none of them was read, whole or in part. */
export function isAssumed(keys: readonly string[]): boolean {
  return !keys.some((key) => SOURCES[key]?.seen === 'opened' || SOURCES[key]?.seen === 'excerpt');
}
