/**
 * Makes the demo's clips: SYNTHETIC, worked out and not filmed. They show what the tool prints; they are no evidence of
 * anything about a camera. `node demo/footage/make.mjs` writes them again beside this file, with ffmpeg.
 *
 * crown-1, crown-2   a drop onto a film of cordial, at the rate planned; in the first the left head pulses with the mains
 * card-soft-box      two seconds of a grey card under the soft box alone
 * dropper-1 … -5     the valve opens after its firing light has come on in the corner of the picture
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const HERE = dirname(fileURLToPath(import.meta.url));

/** @typedef {{ width: number, height: number, frames: number, rate_fps: number, noise: number, seed: number, crf: number, isEachWhole: boolean }} Form */
/** Light of red, green and blue at a place in the picture and a frame; 1 is white. */
/** @typedef {(x: number, y: number, out: Float64Array) => void} Painter */

/** @param {number} seed */
function normals(seed) {
  let state = (seed * 0x9e3779b1) >>> 0 || 1;
  const flat = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(flat())) * Math.cos(2 * Math.PI * flat());
}

/** Rec. ITU-R BT.709, item 1.2: light to signal. @param {number} light */
const signal = (light) => (light < 0.018 ? 4.5 * light : 1.099 * light ** 0.45 - 0.099);

/** @param {number} from @param {number} to @param {number} value */
function smooth(from, to, value) {
  const share = Math.min(1, Math.max(0, (value - from) / (to - from)));
  return share * share * (3 - 2 * share);
}

/**
 * @param {string} name
 * @param {Form} form
 * @param {(frame: number) => Painter} scene
 */
async function make(name, { width, height, frames, rate_fps, noise, seed, crf, isEachWhole }, scene) {
  const path = join(HERE, `SYNTHETIC-${name}.mp4`);
  const from = ['-f', 'rawvideo', '-pix_fmt', 'gbrp16le', '-s', `${width}x${height}`, '-r', '25', '-i', 'pipe:0'];
  const as = ['-vf', 'scale=out_color_matrix=bt709:out_range=tv:flags=accurate_rnd+full_chroma_int,format=yuv420p10le', '-c:v', 'libx264', '-preset', 'slow', '-crf', String(crf), '-g', isEachWhole ? '1' : '24', '-bf', '0']; // prettier-ignore
  const tags = ['-color_primaries', 'bt709', '-color_trc', 'bt709', '-colorspace', 'bt709', '-color_range', 'tv', '-metadata', `title=SYNTHETIC ${name}`, '-metadata', `comment=worked out, not filmed; as if taken at ${rate_fps} frames a second`]; // prettier-ignore
  const ffmpeg = spawn('ffmpeg', ['-v', 'error', '-y', ...from, ...as, ...tags, '-fflags', '+bitexact', '-movflags', '+faststart', path], { stdio: ['pipe', 'inherit', 'inherit'] }); // prettier-ignore
  const ended = once(ffmpeg, 'close');
  const normal = normals(seed);
  const out = new Float64Array(3);
  for (let frame = 0; frame < frames; frame += 1) {
    const planes = new Uint16Array(3 * width * height);
    const paint = scene(frame);
    for (let y = 0; y < height; y += 1)
      for (let x = 0; x < width; x += 1) {
        paint(x, y, out);
        for (const [place, channel] of [1, 2, 0].entries()) {
          const light = out[channel] ?? 0;
          // Photons spread as the root of the light does; some noise stays where there is none.
          const noisy = light + noise * normal() * Math.sqrt(Math.max(light, 0.002));
          planes[place * width * height + y * width + x] = Math.round(65535 * Math.min(1, Math.max(0, signal(Math.max(0, noisy))))); // prettier-ignore
        }
      }
    if (!ffmpeg.stdin.write(Buffer.from(planes.buffer))) await once(ffmpeg.stdin, 'drain');
  }
  ffmpeg.stdin.end();
  const [code] = await ended;
  if (code !== 0) throw new Error(`ffmpeg ended with ${code} at ${name}`);
}

const TURN = 2 * Math.PI;

/**
 * A drop of 4 mm onto a dish of cordial, 80 mm across the picture; the left head's light ripples by a share of it.
 * @param {{ ripple: number, warmth: number, rate_fps: number, impact: number, width: number, height: number }} given
 */
function crown({ ripple, warmth, rate_fps, impact, width, height }) {
  const perMm = width / 80;
  const [middle, table] = [width * 0.5, height * 0.74];
  const speed_px = (2 * 1000 * perMm) / rate_fps;
  return (/** @type {number} */ frame) => {
    const t = (frame - impact) / rate_fps;
    const left = 1 + ripple * Math.cos(TURN * 100 * (frame / rate_fps) + 0.7);
    const drop_y = table - 2 * perMm + (frame - impact) * speed_px;
    const wall = t > 0 ? Math.max(0, 17 * (1 - ((t - 0.016) / 0.019) ** 2)) * (t < 0.035 ? 1 : 0) : 0;
    const ring = t > 0 ? 4 + 62 * Math.sqrt(t) : 0;
    const jet = t > 0.034 ? Math.max(0, 13 * (1 - ((t - 0.05) / 0.016) ** 2)) : 0;
    return (/** @type {number} */ x, /** @type {number} */ y, /** @type {Float64Array} */ out) => {
      const [mm_x, mm_y] = [(x - middle) / perMm, (table - y) / perMm];
      const key = 0.62 * left * (1 - 0.55 * smooth(0.05, 0.95, x / width));
      const fill = 0.62 * (0.45 + 0.55 * smooth(0.05, 0.95, x / width));
      const light = key + fill;
      // A wall of grey that falls off upwards, with the grain of plaster, and a table edge.
      const grain = 1 + 0.05 * Math.sin(x * 0.31 + 2 * Math.sin(y * 0.17)) * Math.sin(y * 0.23 + Math.sin(x * 0.11));
      let r = 0.17 * (0.75 + 0.4 * (y / height)) * grain;
      let [g, b] = [r, r];
      const dish = Math.hypot(mm_x / 34, mm_y / 7.5);
      if (y > table - 9 * perMm && dish < 1.12) {
        const rim = smooth(1.12, 1.06, dish) * (1 - smooth(1.02, 0.98, dish));
        const waves =
          t > 0 ? 0.12 * Math.sin(dish * 40 - t * 900) * smooth(ring / 34 + 0.05, ring / 34 - 0.1, dish) : 0;
        const within = smooth(1.02, 0.98, dish);
        [r, g, b] = [r * (1 - within) + within * (0.3 + waves * 0.4), g * (1 - within) + within * (0.035 + waves * 0.1), b * (1 - within) + within * (0.05 + waves * 0.12)]; // prettier-ignore
        [r, g, b] = [r + rim * 0.35, g + rim * 0.35, b + rim * 0.35];
      }
      if (wall > 0) {
        const turn = Math.asin(Math.max(-1, Math.min(1, mm_x / (ring + 0.35 * mm_y))));
        const spikes = 0.62 + 0.38 * Math.cos(turn * 9) ** 2;
        const inside = Math.abs(mm_x) < ring + 0.35 * mm_y && mm_y > -1 && mm_y < wall * spikes;
        const edge = 1 - smooth(0.72, 1, Math.abs(mm_x) / (ring + 0.35 * Math.max(0, mm_y) + 0.01));
        if (inside) [r, g, b] = [0.42 + 0.2 * (1 - edge), 0.05 + 0.12 * (1 - edge), 0.07 + 0.12 * (1 - edge)];
      }
      if (jet > 0 && mm_y > -1 && mm_y < jet && Math.abs(mm_x) < 2.2 - 0.09 * mm_y) [r, g, b] = [0.5, 0.07, 0.09];
      if (frame < impact + 1) {
        const off = Math.hypot(x - middle, y - drop_y) / (2 * perMm);
        const body = 1 - smooth(0.9, 1.08, off);
        const shine =
          1 - smooth(0.1, 0.3, Math.hypot(x - middle + 0.8 * perMm, y - drop_y + 0.7 * perMm) / (2 * perMm));
        [r, g, b] = [r * (1 - body) + body * (0.4 + 0.45 * shine), g * (1 - body) + body * (0.05 + 0.5 * shine), b * (1 - body) + body * (0.07 + 0.5 * shine)]; // prettier-ignore
      }
      out[0] = r * light * (1 + warmth);
      out[1] = g * light;
      out[2] = b * light * (1 - warmth);
    };
  };
}

// Frames that are coded whole, as cameras code them: one made of others hides a movement, or invents one.
const CROWN = { width: 384, height: 216, frames: 240, rate_fps: 2084, noise: 0.005, crf: 19, isEachWhole: true };
const place = { rate_fps: CROWN.rate_fps, width: CROWN.width, height: CROWN.height };
await make('crown-1', { ...CROWN, seed: 11 }, crown({ ...place, ripple: 0.082, warmth: 0, impact: 96 }));
await make('crown-2', { ...CROWN, seed: 12 }, crown({ ...place, ripple: 0, warmth: 0.035, impact: 104 }));

const CARD = {
  width: 96,
  height: 54,
  frames: 2000,
  rate_fps: 1000,
  noise: 0.012,
  crf: 16,
  seed: 21,
  isEachWhole: false,
};
/** The light of diodes that let the mains through: 100 times a second, with some of twice that. @param {number} t */
const softBox = (t) => 1 + 0.058 * Math.cos(TURN * 100 * t + 0.4) + 0.012 * Math.cos(TURN * 200 * t + 1.9);
await make('card-soft-box', CARD, (frame) => (_x, _y, out) => out.fill(0.2 * softBox((frame + 0.25) / CARD.rate_fps)));

const DROPPER = { width: 192, height: 108, frames: 120, rate_fps: 2000, noise: 0.005, crf: 20, isEachWhole: true };
/** Pixels of a millimetre: the picture is 40 mm wide. */
const PER_MM = 4.8;
/** The valve's latency in each clip, seconds, drawn once about 12 ms by 0.2 ms. */
const LATENCIES_s = [0.01213, 0.01177, 0.01205, 0.01192, 0.01229];
for (const [i, latency_s] of LATENCIES_s.entries()) {
  const fired = 36 + 3 * i;
  await make(`dropper-${i + 1}`, { ...DROPPER, seed: 31 + i }, (frame) => {
    const t = (frame - fired) / DROPPER.rate_fps - latency_s;
    const isLit = frame >= fired;
    const fallen_px = t > 0 ? PER_MM * (120 * t + 0.5 * 9810 * t * t) : 0;
    return (x, y, out) => {
      const grain = 1 + 0.08 * Math.sin(x * 0.5 + Math.sin(y * 0.4)) * Math.sin(y * 0.37);
      let tone = 0.3 * grain;
      if (Math.abs(x - 80) < 13 && y < 34) tone = 0.08;
      const hanging = Math.hypot((x - 80) / 12, (y - 36 - fallen_px) / 14);
      tone += (0.75 - tone) * (1 - smooth(0.85, 1.1, hanging));
      out.fill(tone);
      const lamp = Math.hypot(x - 172, y - 90);
      if (lamp < 8) [out[0], out[1], out[2]] = isLit ? [0.85, 0.35, 0.2] : [0.06, 0.02, 0.02];
    };
  });
}
