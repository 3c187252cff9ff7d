/** The sources that laws cite. Made from docs/sources.yaml by `npm run sources`: edit that file, not this one. */

export interface Source {
  readonly title: string;
  /** opened: the text was read; excerpt: a part or a page quoting it; memory: not looked up; practice: no source. */
  readonly seen: 'opened' | 'excerpt' | 'memory' | 'practice';
}

export const SOURCES: Readonly<Record<string, Source>> = {
  'aerosol-course': {
    title: 'University course module on aerosol transport, table of stopping distances',
    seen: 'opened',
  },
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
  'animation-pan': { title: 'Handbook of drawn animation, on pans', seen: 'opened' },
  'arc-exercises': {
    title: 'Pages on the height of an arc and on centripetal acceleration, with worked values',
    seen: 'opened',
  },
  'army-copy-course': {
    title: 'US Army correspondence course SS0512, Photography, bellows extension factor',
    seen: 'opened',
  },
  'balloon-study': { title: 'Film and news of how rubber balloons burst, by one tear or by many', seen: 'excerpt' },
  'beam-angle-entry': { title: 'Lighting glossary, entry on beam and field angle', seen: 'opened' },
  'binning-note': {
    title: "Image sensor consultant's note on binning in the charge, voltage and digital domains",
    seen: 'opened',
  },
  'binomial-table': { title: "Statistics textbook's tables, A1, the binomial distribution", seen: 'excerpt' },
  'blue-light-practice': {
    title: 'Blue light in white sources by their colour temperature, about 0.3 to 1 W weighted in 1000 lm',
    seen: 'memory',
  },
  'blur-in-squares': { title: 'Blurs of defocus and diffraction added in squares', seen: 'practice' },
  'brent-minimum': {
    title:
      "Brent's method for the minimum of a function of one variable without its derivative, as numerical libraries have it",
    seen: 'memory',
  },
  'bt2020-matrix': {
    title: 'Recommendation ITU-R BT.2020, primaries and white as a page on both recommendations has them',
    seen: 'excerpt',
  },
  'bt601-matrix': {
    title: 'Recommendation ITU-R BT.601, its weights of red, green and blue, as a graphics course prints them',
    seen: 'excerpt',
  },
  'bt709-curve': {
    title: 'colour-science, documentation of oetf_inverse_BT709, after Recommendation ITU-R BT.709-6',
    seen: 'opened',
  },
  'bt709-matrix': {
    title:
      'Recommendation ITU-R BT.709, weights, differences, levels, primaries and matrix to X, Y, Z, as a visual effects primer and a graphics course print them',
    seen: 'excerpt',
  },
  'bubble-jets': { title: 'Popular report on daughter bubbles, with speeds of the drops they throw', seen: 'excerpt' },
  'calibration-practice': {
    title: 'Scaling what was planned for a lamp by what a meter reads on the day',
    seen: 'practice',
  },
  'candela-lumen-pages': {
    title: 'Web pages converting candela to lumens for an even cone, each with one worked',
    seen: 'opened',
  },
  'capillary-scaling': { title: "Time in which surface tension moves a liquid's own inertia", seen: 'excerpt' },
  'cavity-balance': {
    title: 'Energy of a drop spent in lifting a half sphere of liquid, and the fall of its walls',
    seen: 'memory',
  },
  'cct-limit': {
    title: 'CIE 15, correlated colour temperature not to be used beyond 0.05 of the black bodies',
    seen: 'memory',
  },
  'champagne-nucleation': {
    title:
      'Close-up on bubble nucleation in a glass of champagne, American Journal of Enology and Viticulture, abstract',
    seen: 'excerpt',
  },
  'chi-square-table': {
    title: 'NIST/SEMATECH e-Handbook of Statistical Methods, lower critical values of chi-square',
    seen: 'excerpt',
  },
  'chi-square-table-upper': {
    title: "Table of the chi-square distribution to five decimals, handed out with a university's examinations",
    seen: 'excerpt',
  },
  'cie-1976-ucs': { title: 'colour-science, documentation of XYZ_to_CIE1976UCS, after CIE 15', seen: 'opened' },
  'cie-led-spectra': {
    title: 'CIE 15:2018, Colorimetry, illuminants of white light-emitting diodes, integrated',
    seen: 'excerpt',
  },
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
  'colour-bars': {
    title: 'vapoursynth-colorbars, tables of bars after SMPTE EG 1, RP 219-1 and RP 219-2, ten and twelve bits',
    seen: 'opened',
  },
  'colour-hdri': {
    title: 'colour-hdri, module exposure.dsc, documentation examples and unit tests after ISO 12232:2006',
    seen: 'opened',
  },
  'colour-practice': {
    title: 'Which parts of a picture pass for neutral, and from where on a drift of colour is told',
    seen: 'practice',
  },
  'colour-step': { title: 'CIE TN 001:2014, a circle of one step in u′, v′, of radius 0.0011', seen: 'memory' },
  'configuration-factors': {
    title: 'Catalogue of radiation configuration factors, section B, element to rectangle and to disc',
    seen: 'memory',
  },
  'cooling-example': { title: 'Calculus exercise on a cup of coffee that cools', seen: 'opened' },
  'cork-speed': {
    title: 'News of high-speed pictures of corks leaving bottles at 4, 12 and 18 °C, Journal of Food Engineering 116',
    seen: 'excerpt',
  },
  'corner-detail': {
    title:
      'J. Shi and C. Tomasi, Good features to track, IEEE Conference on Computer Vision and Pattern Recognition, pages 593 to 600',
    seen: 'memory',
  },
  cossali: { title: 'The impact of a single drop on a wetted solid surface, Experiments in Fluids 22', seen: 'memory' },
  'cue-practice': {
    title: 'Latencies, jitters, reset and offsets of rigs and triggers as crews reckon with them before measuring',
    seen: 'practice',
  },
  'cusum-table': {
    title: 'Six Sigma Advanced Tools, cumulative sum charts with fast initial response, table 24.1',
    seen: 'excerpt',
  },
  'day-practice': {
    title: 'How long resets, changes of lens, format, light and set, safety calls and reviews take on a table-top day',
    seen: 'practice',
  },
  'diagonal-divisor': { title: 'The picture diagonal divided by 1500 as circle of confusion', seen: 'memory' },
  'dimmer-practice': { title: 'Curves of dimmers as makers offer them', seen: 'practice' },
  'distance-example': {
    title: "Lighting company's page on the inverse square law, 100 cd worked at two distances",
    seen: 'opened',
  },
  'distance-readings': { title: "Students' forum, six readings of a small lamp by distance", seen: 'opened' },
  'dither-series': {
    title: 'Mean of a staircase under normal noise, the first term of its Fourier series',
    seen: 'memory',
  },
  'dof-derivation': {
    title: 'Derivation of the depth-of-field equations with pupil magnification, optics pages',
    seen: 'excerpt',
  },
  'drinks-surface-tension': { title: 'Weblog table of surface tensions of household liquids', seen: 'opened' },
  'drop-frame-explained': {
    title:
      'Public explanations of drop-frame timecode, an algorithm with worked labels, and a forum thread on 60000/1001',
    seen: 'excerpt',
  },
  'droplet-practice': {
    title: 'A quarter of its own size from frame to frame, a fiftieth in one exposure',
    seen: 'practice',
  },
  duclaux: { title: 'Dynamics of transient cavities, Journal of Fluid Mechanics 591', seen: 'memory' },
  'dust-flames': { title: 'Turbulent flame speeds and laminar burning velocities of dusts, abstract', seen: 'excerpt' },
  'efficacy-abstract': { title: 'Maximum spectral luminous efficacy of white light, abstract', seen: 'excerpt' },
  'efflux-examples': { title: 'Two physics exercises on water leaving an open vessel', seen: 'opened' },
  'ethernet-payload': { title: 'Wiki table of payload data rates of TCP over Ethernet', seen: 'opened' },
  'eulumdat-importer': {
    title: 'Source of a scene loader for EULUMDAT files, with the planes that each symmetry stores',
    seen: 'opened',
  },
  'eulumdat-page': { title: 'EULUMDAT file format, pages listing its lines and symmetries', seen: 'excerpt' },
  'ev-table': {
    title: 'Table of illuminance and luminance by exposure value at ISO 100, encyclopaedia article on exposure value',
    seen: 'excerpt',
  },
  'event-practice': { title: 'Speeds and durations of table-top actions as crews plan them', seen: 'practice' },
  'exposure-mean': { title: 'Mean of a cosine over an interval, the sinc function', seen: 'memory' },
  'extension-tubes': {
    title: 'Question and answer on extension tubes and magnification, photography forum',
    seen: 'excerpt',
  },
  'eye-choices': {
    title:
      'Transience, peak sensitivity, pooling and viewing chosen here, on the cautious side of what vision studies print',
    seen: 'practice',
  },
  'f-number-article': { title: 'Encyclopaedia article on the f-number', seen: 'excerpt' },
  'factor-examples': {
    title: 'Help pages of an equation solver, shape factors worked, citing textbooks of radiation heat transfer',
    seen: 'excerpt',
  },
  'falling-with-drag': {
    title: 'Physics help page on a fall with quadratic air resistance, with a worked value beside the fall without air',
    seen: 'opened',
  },
  'faucet-exercise': {
    title: 'Two entrance-examination exercises on a stream of water that narrows below a tap',
    seen: 'opened',
  },
  'field-angle-note': {
    title: 'Technical note on choosing lenses for line cameras, with the field angle at a magnification',
    seen: 'excerpt',
  },
  'filament-balance': {
    title: 'Heat balance of a thin radiating wire on alternating current, worked to first order',
    seen: 'memory',
  },
  'filament-handbook': { title: 'Percent flicker of filament lamps by power, lighting handbooks', seen: 'memory' },
  'filament-lag': {
    title: 'Literature of the reference lamp of IEC 61000-4-15, thermal lag of filaments of 60 W',
    seen: 'memory',
  },
  'flicker-check-values': {
    title: 'Check values for flicker of lamps, worked out by an independent reference in numpy',
    seen: 'opened',
  },
  'flicker-numerics': {
    title: 'The same relations worked apart with a numerical library, and again by adaptive quadrature',
    seen: 'practice',
  },
  'flicker-practice': {
    title:
      "Shapes, depths and rates of lamps' flicker, drifts of mains and gates of grading, as crews reckon with them",
    seen: 'practice',
  },
  'fluorescent-depth': {
    title: 'Depth of flicker of fluorescent tubes on magnetic and electronic ballasts, lighting handbooks',
    seen: 'memory',
  },
  'flux-modulation': {
    title:
      'International lighting vocabulary of 2011, online, term on the amplitude of fluctuation of the luminous flux',
    seen: 'opened',
  },
  'fnv-vectors': {
    title: 'FNV-1a of 32 bits, test vectors of its authors, as repeated in tests of several open libraries',
    seen: 'excerpt',
  },
  'focus-measures': {
    title: 'Sharpness from the Sobel gradient, called Tenengrad, and from the variance of the Laplacian',
    seen: 'memory',
  },
  'food-properties': {
    title: 'Appendices of textbooks on food and process engineering, properties of foods',
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
  'function-handbook': { title: 'Handbook of Mathematical Functions, chapters 7 and 26', seen: 'memory' },
  'gap-spectrum': {
    title: 'Least-squares spectra of samples that are missing, after Lomb and Scargle, generalised to a trend',
    seen: 'memory',
  },
  'glass-crack-film': { title: "Ceramics society's report on a film of tempered glass breaking", seen: 'opened' },
  'gunn-kinzer': {
    title: 'The terminal velocity of fall for water droplets in stagnant air, Journal of Meteorology 6, table 2',
    seen: 'excerpt',
  },
  'halogen-article': {
    title: 'Encyclopaedia article on halogen lamps, section on the effect of voltage',
    seen: 'excerpt',
  },
  'harmonic-fit': {
    title: 'Rate of a sum of harmonics by least squares, and the bound on how well it can be known',
    seen: 'memory',
  },
  'heat-practice': {
    title: 'Shares of light absorbed, cooling by still air and the first change that shows, on the cautious side',
    seen: 'practice',
  },
  'heat-textbook': { title: "Textbook heat transfer, lumped capacity and Newton's law of cooling", seen: 'memory' },
  'held-karp': { title: 'Held and Karp, A dynamic programming approach to sequencing problems', seen: 'memory' },
  'hlg-curve': {
    title: 'colour-science, documentation of oetf_inverse_BT2100_HLG, after Recommendation ITU-R BT.2100',
    seen: 'excerpt',
  },
  'huber-weights': {
    title: 'Huber, Robust estimation of a location parameter, and the constant 1.345 for 95 percent efficiency',
    seen: 'memory',
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
  'ieee-1789': {
    title: 'IEEE 1789-2015, Recommended practices for modulating current in high-brightness LEDs',
    seen: 'memory',
  },
  'ies-inverse-square': {
    title: 'IES, Definitions, entry 9.1.1, inverse square law, with its note on sources of finite size',
    seen: 'opened',
  },
  'ies-lm63-importer': {
    title: "Source and comments of a ray-tracing package's importer for LM-63 files, and its coordinate functions",
    seen: 'opened',
  },
  'illumination-guide': {
    title: 'Field guide to illumination, page on tungsten lamps with one worked at 5 % over its current',
    seen: 'excerpt',
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
  'jet-breakup-measured': { title: 'Measured breakup lengths of water jets of 0.3 to 1 mm, abstract', seen: 'excerpt' },
  'lamp-rerating': { title: 'Encyclopaedia article on lamp rerating, powers of the voltage', seen: 'excerpt' },
  'lamp-safety-standard': { title: 'IEC 62471:2006, Photobiological safety of lamps and lamp systems', seen: 'memory' },
  'launch-energy': {
    title: 'Work of compressed air on what it pushes, and the share that valves and leaks leave',
    seen: 'practice',
  },
  'lens-tutorial': { title: 'Photographic lenses tutorial of a news group (1995)', seen: 'excerpt' },
  'lighting-textbook': {
    title: 'Open textbook on lighting for electricians, chapter on the inverse square law',
    seen: 'opened',
  },
  'liquid-practice': { title: 'Densities and viscosities of foods as planning uses them', seen: 'practice' },
  'lm-63': {
    title: 'ANSI/IESNA LM-63-02, Standard file format for the electronic transfer of photometric data, definitions',
    seen: 'excerpt',
  },
  'lobe-practice': {
    title: "Smooth lobe through the half and the tenth of a lamp's stated beam and field angles",
    seen: 'practice',
  },
  'log-curve': {
    title: "Academy Software Foundation's public transforms, lin_to_ACEScct, after S-2016-001",
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
  'match-burn': { title: 'Popular page on how long a match burns', seen: 'opened' },
  'match-films': { title: 'News of films of a match striking', seen: 'opened' },
  'melting-example': { title: 'Answer of a physics page on how long ice takes to melt', seen: 'opened' },
  mendelson: {
    title: 'The prediction of bubble terminal velocities from wave theory, AIChE Journal 13',
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
  'miniature-handbook': { title: 'Visual effects handbook, appendix of charts and formulas', seen: 'opened' },
  'modifier-practice': {
    title: 'Losses of scrims, diffusion and gels as crews reckon with them before measuring',
    seen: 'practice',
  },
  'morsi-alexander': { title: 'Measured drag coefficients of spheres, Journal of Fluid Mechanics 55', seen: 'excerpt' },
  'motion-activity': {
    title: 'Mean and spread of the absolute difference of two noisy frames, and thresholds on them',
    seen: 'memory',
  },
  'move-profiles': { title: 'Engineering pages on trapezoidal and triangular move profiles', seen: 'excerpt' },
  mundo: {
    title:
      'Droplet-wall collisions, experimental studies of the deformation and breakup process, International Journal of Multiphase Flow 21',
    seen: 'memory',
  },
  'nd-names': {
    title: 'Photography article comparing the names of neutral density filters, table of stops, densities and factors',
    seen: 'opened',
  },
  'nd-table': { title: 'Camera reference wiki, table of neutral densities and the stops they take', seen: 'opened' },
  'negative-binomial-pages': {
    title:
      'Documentation of two numerical programs on the negative binomial distribution, with a table of least numbers of tries',
    seen: 'opened',
  },
  'noise-sensitivity': {
    title:
      'Contrast sensitivity of the human eye by internal noise, after Barten, 1999, in an open implementation with time',
    seen: 'excerpt',
  },
  'normal-quantile-algorithm': {
    title: 'Algorithm AS 241, The percentage points of the normal distribution, its test values',
    seen: 'memory',
  },
  'normal-table': {
    title: "Statistics textbook's table of cumulative probabilities for the standard normal distribution",
    seen: 'excerpt',
  },
  'null-shutter-page': {
    title: "Photographer's page on mains frequency and shutter speed, with lamps on an oscilloscope",
    seen: 'excerpt',
  },
  'numerical-library': {
    title: 'Widely used numerical library run beside the law, to check it where no table was found',
    seen: 'opened',
  },
  'offset-method': {
    title: 'School physics page, distance against one over the root of the count, and its intercept',
    seen: 'opened',
  },
  'ohnesorge-article': { title: 'Encyclopaedia article on the Ohnesorge number', seen: 'excerpt' },
  'ohno-example': {
    title: 'colour-science, documentation of uv_to_CCT, example by the method of Ohno 2013',
    seen: 'opened',
  },
  'orifice-coefficients': { title: 'Engineering wiki on the orifice equation', seen: 'excerpt' },
  'orifice-examples': { title: 'Two hydraulics exercises on flow through an orifice', seen: 'opened' },
  'p3-primaries': { title: 'Primaries of digital cinema with a white of D65', seen: 'memory' },
  'packed-pixels': { title: 'Linux media documentation, packed raw pixel formats', seen: 'opened' },
  'pan-rule': { title: "Camera maker's guide to panning speed", seen: 'opened' },
  'paper-exercise': { title: 'University optics exercise on the luminance of paper lit by 450 lx', seen: 'opened' },
  'pendulum-ratios': {
    title: "Calculator page on a pendulum's period, table of periods over that of a small swing",
    seen: 'opened',
  },
  'pendulum-table': {
    title: 'University exercise on the period of a pendulum of one metre, table of periods from 10 to 80 degrees',
    seen: 'opened',
  },
  'penumbra-examples': {
    title:
      'Worked exercise on the shadow of a disc before a wide source, and pages on geometric unsharpness in radiography',
    seen: 'opened',
  },
  'phase-correlation': {
    title: "Documentation of an open image library's phase correlation, with its equations",
    seen: 'opened',
  },
  'phase-cut': {
    title: 'Power and first harmonic of a half-wave of which the start is cut away, integrated',
    seen: 'memory',
  },
  'philox-vectors': {
    title: 'Random123, known-answer test vectors of philox4x32 with ten rounds, in copies of its file of vectors',
    seen: 'excerpt',
  },
  'photometric-distance': {
    title: 'CIE International lighting vocabulary, photometric distance law, with its notes',
    seen: 'opened',
  },
  'planck-efficacy': {
    title: "Planck's law weighed by the eye's sensitivity, integrated for black bodies",
    seen: 'memory',
  },
  'polygon-clipping': { title: 'Reentrant polygon clipping, a shape cut by one plane after another', seen: 'memory' },
  'polygon-contour': { title: 'Photometria, the light of a polygon as a sum over its edges', seen: 'memory' },
  'pool-example': { title: 'Web page on beam spread with one example worked', seen: 'excerpt' },
  'pool-factors': {
    title: "Technical theatre teacher's answer listing width of the pool over throw by angle",
    seen: 'opened',
  },
  'pool-fires': { title: 'Database of measured pool fires of a national laboratory', seen: 'opened' },
  'popcorn-study': {
    title: 'News of a study of popcorn bursting, Journal of the Royal Society Interface',
    seen: 'excerpt',
  },
  'pq-curve': {
    title: 'colour-science, documentation and tests of eotf_ST2084, after SMPTE ST 2084:2014',
    seen: 'opened',
  },
  'probability-textbook': {
    title: 'Textbook probability, sums and differences of independent normal spreads',
    seen: 'memory',
  },
  puffing: {
    title: 'Experiments on the periodic instability of buoyant plumes and pool fires, Combustion and Flame 93',
    seen: 'memory',
  },
  'pupil-blog': { title: "Photographer's articles on depth of field with pupil magnification", seen: 'excerpt' },
  'pupil-thread': {
    title: 'Photography forum, thread on the bellows factor of lenses with unequal pupils',
    seen: 'opened',
  },
  'pwm-series': { title: 'Fourier series of a train of rectangular pulses', seen: 'memory' },
  'queue-textbook': {
    title: 'Queueing theory textbooks, mean wait of one server with random arrivals',
    seen: 'memory',
  },
  'radiation-directive': {
    title: 'Directive 2006/25/EC, artificial optical radiation, Annex I, exposure limits for workers',
    seen: 'excerpt',
  },
  'radiometer-manual': {
    title:
      'Manual of a radiometer that judges lamps by IEC 62471, pages on blue light, the retina, the front of the eye and the skin',
    seen: 'opened',
  },
  'ramp-thread': {
    title: "Film students' forum, thread on holding exposure through a change of frame rate",
    seen: 'opened',
  },
  'range-table': {
    title:
      'Tables of Range and Studentized Range, Annals of Mathematical Statistics 31, the row for infinite degrees of freedom',
    seen: 'memory',
  },
  'reaction-practice': {
    title: "Middle, spread and tail of a person's delay at a button, chosen to meet a published mean",
    seen: 'practice',
  },
  'reaction-study': {
    title: 'Factors influencing the latency of simple reaction time, open-access study of 1469 people',
    seen: 'excerpt',
  },
  'readout-notes': { title: "Camera makers' notes on readout timing and highest frame rate", seen: 'excerpt' },
  'relaxation-time': { title: 'Aerosol course notes on the inertia of particles', seen: 'excerpt' },
  'reynolds-examples': {
    title: 'Two exercises on the Reynolds number in a pipe, exam preparation page and college course page',
    seen: 'opened',
  },
  'ribe-coiling': { title: 'Coiling of viscous jets, Proceedings of the Royal Society A 460', seen: 'memory' },
  'rim-exercises': { title: "Two exercises on the speed of a blade's tip", seen: 'opened' },
  'robertson-lines': {
    title:
      "colour-science, module temperature.robertson1968: Robertson's lines of equal temperature with the correction at 325 mired, and its example",
    seen: 'opened',
  },
  'rolling-geometry': { title: "Rows of a rolling shutter as samples later by one row's time each", seen: 'practice' },
  'rope-trick': { title: 'Fluid rope trick investigated, Nature 392', seen: 'excerpt' },
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
  'splash-depth': { title: 'Splash of a waterdrop at terminal velocity, Science 169', seen: 'excerpt' },
  'splash-times': { title: "Phases of a drop's impact in times of the impact", seen: 'practice' },
  'spread-scaling': {
    title: 'Maximal deformation of an impacting drop, Journal of Fluid Mechanics 517',
    seen: 'memory',
  },
  'spring-exercises': { title: 'Two physics exercises on a toy dart gun', seen: 'opened' },
  'srgb-curve': { title: 'IEC 61966-2-1, default RGB colour space, its transfer curve', seen: 'memory' },
  'stage-angles': { title: 'Stage lighting lesson on fixtures, definitions of beam and field angle', seen: 'excerpt' },
  'stop-series-thread': {
    title: 'Large-format photography forum, thread on computing intermediate stops',
    seen: 'opened',
  },
  'stopping-formula': {
    title: "Stopping distance of a sphere beyond Stokes' drag, in closed form, as textbooks on aerosols print it",
    seen: 'memory',
  },
  'stroboscopic-measure': {
    title: 'CIE TN 006:2016, Visual aspects of time-modulated lighting systems, stroboscopic visibility measure',
    seen: 'memory',
  },
  'student-table': {
    title: "NIST/SEMATECH e-Handbook of Statistical Methods, upper critical values of Student's t",
    seen: 'excerpt',
  },
  'sunlight-thread': { title: 'Photography forum, thread quoting measured daylight in footcandles', seen: 'opened' },
  'surface-tension-table': { title: 'Engineering reference tables of surface tension', seen: 'opened' },
  't-number-dictionary': { title: 'Photography dictionary, entry on the T-number', seen: 'opened' },
  'taylor-culick': { title: 'Encyclopaedia article on the speed of a retracting liquid sheet', seen: 'opened' },
  'thermocouple-example': {
    title: 'Worked example of a heat transfer textbook, as a program that prints its answer',
    seen: 'opened',
  },
  'thin-lens-bellows': {
    title: "Worked examples of bellows draw, distance and magnification, a large-format photographer's page",
    seen: 'opened',
  },
  'three-phase-sum': { title: 'Sum of three ripples a third of a cycle apart', seen: 'memory' },
  'throw-examples': { title: 'University and school pages on thrown balls, four worked examples', seen: 'opened' },
  'throw-textbook': { title: 'Height and range of a throw without air', seen: 'memory' },
  'transient-response': {
    title: 'Open toolbox of image systems, impulse response of the eye after Watson, 1986',
    seen: 'opened',
  },
  'two-pixels': { title: 'Two pixels as the largest blur that passes for sharp', seen: 'practice' },
  'wagon-wheel': { title: 'Page of optical illusions, on the wagon wheel', seen: 'opened' },
  'water-entry': { title: 'Water entry of small hydrophobic spheres, Journal of Fluid Mechanics 619', seen: 'excerpt' },
  'wcag-flash': {
    title:
      'WCAG 2.2, success criterion 2.3.1, Three Flashes or Below Threshold, and its definition of general flash and red flash thresholds',
    seen: 'excerpt',
  },
  'weber-example': { title: 'Calculator page on the Weber number, with a worked example', seen: 'opened' },
  'weber-jet': {
    title: 'Zum Zerfall eines Flüssigkeitsstrahles, Zeitschrift für angewandte Mathematik und Mechanik 11',
    seen: 'memory',
  },
  'white-light-efficacy': {
    title: 'Maximum spectral luminous efficacy of white light, Journal of Applied Physics 111, 104909',
    seen: 'excerpt',
  },
  'working-time-directive': {
    title: 'Directive 2003/88/EC on the organisation of working time, articles 3 and 4, in summaries',
    seen: 'excerpt',
  },
  'worthington-splash': { title: 'The splash of a drop', seen: 'excerpt' },
  'yarin-weiss': {
    title:
      'Impact of drops on solid surfaces, self-similar capillary waves, and splashing, Journal of Fluid Mechanics 283',
    seen: 'memory',
  },
  'zoom-practice': {
    title: 'Intensity between stated settings of a focusable lamp, on a line with both scales logarithmic',
    seen: 'practice',
  },
};

/** Whether a figure resting on these sources alone is assumed: none of them was read, whole or in part. */
export function isAssumed(keys: readonly string[]): boolean {
  return !keys.some((key) => SOURCES[key]?.seen === 'opened' || SOURCES[key]?.seen === 'excerpt');
}
