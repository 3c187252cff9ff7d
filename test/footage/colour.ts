/**
 * SYNTHETIC footage in colour: frames worked out, not filmed. A card under a light whose red and blue go their own way,
 * with coloured patches and a drop before it; read by a sensor with noise, written with the curve of high definition and
 * the equations of brightness and colour differences as their recommendations print them.
 *
 * Light of red, green and blue are numbers between 0 and 1, of no camera and no lamp in particular. Nothing here is shared
 * with the code that measures it.
 */
import { ffmpeg } from './clips.ts';

export type Light3 = readonly [red: number, green: number, blue: number];

/** A rectangle, 0 to 1 across and down the picture, of one reflectance. */
export interface Patch {
  readonly from: readonly [x: number, y: number];
  readonly to: readonly [x: number, y: number];
  readonly reflects: Light3;
}

export interface ColourScene {
  readonly width: number;
  readonly height: number;
  readonly frames: number;
  readonly seed: number;
  /** What the whole picture reflects where no patch lies. */
  readonly card?: Light3;
  readonly patches?: readonly Patch[];
  /** Light of each colour in a frame. */
  readonly light: (frame: number) => Light3;
  /** Standard deviation of a pixel's light, of light 1; grows as the root of light from there. */
  readonly noise?: number;
  /** A patch that moves: its middle, 0 to 1, by frame. */
  readonly drop?: { readonly radius: number; readonly reflects: Light3; readonly at: (frame: number) => readonly [x: number, y: number] };
} // prettier-ignore

/** Light of every pixel, three numbers each, frame by frame. */
export function* lightOfScene(scene: ColourScene): Generator<Float64Array> {
  const { width, height, frames, card = [0.35, 0.35, 0.35], patches = [], light, noise = 0.01, drop } = scene;
  let state = (scene.seed * 2246822519 + 374761393) >>> 0 || 1;
  const flat = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  // Twelve flat numbers add up to a normal one near enough for noise.
  const normal = (): number => {
    let sum = -6;
    for (let i = 0; i < 12; i += 1) sum += flat();
    return sum;
  };
  const still = new Float64Array(3 * width * height);
  for (let i = 0; i < width * height; i += 1) {
    const [x, y] = [((i % width) + 0.5) / width, (Math.floor(i / width) + 0.5) / height];
    const on = patches.find(({ from, to }) => x >= from[0] && x < to[0] && y >= from[1] && y < to[1]);
    still.set(on?.reflects ?? card, 3 * i);
  }
  for (let frame = 0; frame < frames; frame += 1) {
    const picture = still.slice();
    if (drop) {
      const [x, y] = drop.at(frame);
      for (let i = 0; i < width * height; i += 1)
        if (Math.hypot((i % width) + 0.5 - x * width, Math.floor(i / width) + 0.5 - y * height) < drop.radius * width) picture.set(drop.reflects, 3 * i); // prettier-ignore
    }
    const shines = light(frame);
    for (let i = 0; i < picture.length; i += 1) {
      const clean = picture[i]! * shines[i % 3]!;
      picture[i] = noise > 0 ? clean + noise * Math.sqrt(Math.max(clean, 0.01)) * normal() : clean;
    }
    yield picture;
  }
}

/** The curve of Recommendation BT.709, light to signal. */
const written = (light: number): number => {
  const size = Math.min(1, Math.abs(light));
  const signal = size < 0.018 ? 4.5 * size : 1.099 * size ** 0.45 - 0.099;
  return light < 0 ? -signal : signal;
};

/** Brightness and colour differences of signals, as Recommendations BT.709, BT.601 and BT.2020 print them. */
const DIFFERENCES: Readonly<Record<'bt709' | 'bt601' | 'bt2020', (r: number, g: number, b: number) => Light3>> = {
  bt709: (r, g, b) => {
    const y = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    return [y, (b - y) / 1.8556, (r - y) / 1.5748];
  },
  bt601: (r, g, b) => {
    const y = 0.299 * r + 0.587 * g + 0.114 * b;
    return [y, 0.564 * (b - y), 0.713 * (r - y)];
  },
  bt2020: (r, g, b) => {
    const y = 0.2627 * r + 0.678 * g + 0.0593 * b;
    return [y, (b - y) / 1.8814, (r - y) / 1.4746];
  },
};

export interface Written {
  readonly pixels: 'yuv444p10le' | 'yuv422p10le' | 'yuv420p' | 'gbrp10le' | 'rgb24';
  readonly matrix?: keyof typeof DIFFERENCES;
}

/** How many pixels share a colour difference, across and down. */
const SHARED: Readonly<Record<string, readonly [number, number]>> = { yuv444p10le: [1, 1], yuv422p10le: [2, 1], yuv420p: [2, 2] }; // prettier-ignore

/** One frame's planes, in the order in which ffmpeg takes them. */
export function planesOf(picture: Float64Array, { width, height }: ColourScene, { pixels, matrix = 'bt709' }: Written): readonly (readonly number[])[] {
  const pixel = (i: number): Light3 => [written(picture[3 * i]!), written(picture[3 * i + 1]!), written(picture[3 * i + 2]!)];
  const all = Array.from({ length: width * height }, (_, i) => pixel(i));
  const code = (value: number, most: number): number => Math.max(0, Math.min(most, Math.floor(value + 0.5)));
  if (pixels === 'rgb24') return [all.flatMap((of) => of.map((signal) => code(255 * signal, 255)))];
  if (pixels === 'gbrp10le') return [1, 2, 0].map((at) => all.map((of) => code(1023 * of[at]!, 1023)));
  const bits = pixels === 'yuv420p' ? 8 : 10;
  const [unit, most] = [2 ** (bits - 8), 2 ** bits - 1];
  const whole = all.map((of) => DIFFERENCES[matrix](...of));
  const [across, down] = SHARED[pixels]!;
  const difference = (at: 1 | 2): readonly number[] => {
    const values: number[] = [];
    for (let y = 0; y < height; y += down)
      for (let x = 0; x < width; x += across) {
        let sum = 0;
        for (let j = 0; j < down; j += 1) for (let i = 0; i < across; i += 1) sum += whole[(y + j) * width + x + i]![at];
        values.push(code(unit * (128 + (224 * sum) / (across * down)), most));
      }
    return values;
  };
  return [whole.map(([y]) => code(unit * (16 + 219 * y), most)), difference(1), difference(2)];
} // prettier-ignore

/** Writes a scene as a movie, lossless unless the arguments say otherwise. */
export function writeColourClip(path: string, scene: ColourScene, how: Written, as: readonly string[] = ['-c:v', 'ffv1']): void {
  const chunks: Buffer[] = [];
  for (const picture of lightOfScene(scene))
    for (const plane of planesOf(picture, scene, how))
      chunks.push(how.pixels.endsWith('10le') ? Buffer.from(Uint16Array.from(plane).buffer) : Buffer.from(plane));
  const size = `${scene.width}x${scene.height}`;
  ffmpeg(['-f', 'rawvideo', '-pix_fmt', how.pixels, '-s', size, '-r', '25', '-i', 'pipe:0', ...as, `file:${path}`], Buffer.concat(chunks));
} // prettier-ignore
