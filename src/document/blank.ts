/** The document that a new shoot begins with. */
import { printScalar } from './print.ts';
import { DOCUMENT_VERSION } from './schema.ts';

/** A valid shoot with nothing in it but its title, and comments that show how one is written. */
export function blankShootText(title: string): string {
  return `longsecond: ${DOCUMENT_VERSION}

# Values are written with their units, as you say them: 1/2000 s, 172.8°, T5.6⅓, 41 klx, 3700 fc, 5'6", 64 GiB.
# A value that was measured may carry its spread: 1.5 m/s ± 0.2 m/s.
# Whatever you leave out is worked out or given a stated default; whatever you write is respected.

shoot:
  title: ${printScalar(title.replace(/\s+/g, ' ').trim().slice(0, 200))}

# What is handed over; the first one named by a shot frames it.
# deliverables:
#   wide:
#     rate: 24000/1001
#     pixels: 3840 x 2160

# What there is to shoot with, each under an id that never changes.
# kit:
#   cameras:
#     main:
#       pitch: 6.75 µm
#       activeArea: 4096 x 2304
#       memory: 64 GiB
#       modes:
#         full: { pixels: 4096 x 2304, rate: 938 fps }
#   lenses:
#     macro: { focalLength: 100 mm, widest: T3.1, closeFocus: 32 cm }

# How it is lit: a reading off the meter, or what is intended.
# lighting:
#   key:
#     illuminance: 41 klx
#     reading: stated

# The shots. An id is a letter, then letters, digits and hyphens; the title is what people call it.
# shots:
#   pour-1:
#     title: Pour
#     deliverables: [wide]
#     action: { what: Honey folds, duration: 0.4 s, speed: 1.5 m/s }
#     screenTime: 3.5 s
#     frameWidth: 180 mm
#     depth: 8 mm
#     lighting: key
`;
}
