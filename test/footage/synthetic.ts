/**
 * SYNTHETIC footage: frames worked out, not filmed, with the truth of each beside it. It shows that a method measures
 * what it claims to; it is no evidence of anything about filmed footage.
 *
 * Exact where it matters: each frame's light is the integral of the lamp over its own exposure, in closed form; a moving
 * drop is laid down in steps of less than a quarter of a pixel, each weighed by the lamp at that instant; photons are
 * counted one by one where they are few, as a normal spread where they are many; then come read noise, a full well, and
 * a quantiser of twelve bits with black at 64. Not modelled: refraction, highlights, colour, flare, loss in coding.
 *
 * Nothing here is shared with the code that measures it.
 */

/** Light of a lamp over time, 1 in the mean. */
export type LampLight =
  | { readonly kind: 'steady' }
  /** 1 + depth·cos(2π·f·t + phase). */
  | { readonly kind: 'ripple'; readonly f_Hz: number; readonly depth: number; readonly phase_rad?: number }
  /** On for a share of each period, `low` of full between. */
  | {
      readonly kind: 'pulses';
      readonly f_Hz: number;
      readonly duty: number;
      readonly low?: number;
      readonly phase_rad?: number;
    };

export interface Lamp {
  readonly light: LampLight;
  /** Its share of the light at a place, 0 to 1 across and down the picture; everywhere alike where left out. */
  readonly share?: (x: number, y: number) => number;
}

export interface Drop {
  readonly radius_px: number;
  /** Reflectance, 0 to 1. */
  readonly bright: number;
  readonly x_px: (t_s: number) => number;
  readonly y_px: (t_s: number) => number;
}

/** A small light of its own in the picture, such as one that shows when a rig is fired. */
export interface SignalLight {
  readonly x_px: number;
  readonly y_px: number;
  readonly radius_px: number;
  /** As bright as a surface of this reflectance. */
  readonly bright: number;
  readonly on_s: number;
  readonly off_s?: number;
}

export interface Scene {
  readonly width: number;
  readonly height: number;
  readonly rate_fps: number;
  readonly frames: number;
  readonly exposure_s: number;
  readonly seed: number;
  readonly lamps: readonly Lamp[];
  readonly drop?: Drop;
  readonly signal?: SignalLight;
  /** Electrons of a full well, and of a surface of reflectance 1 under the mean light. */
  readonly fullWell_e?: number;
  readonly white_e?: number;
  readonly readNoise_e?: number;
  /** How much later each row starts, s: a rolling shutter where it is not 0. */
  readonly row_s?: number;
  /** Blur of the lens in a frame, px; exposure of a frame as a factor; where the camera points, px. */
  readonly focus_px?: (frame: number) => number;
  readonly gain?: (frame: number) => number;
  readonly shift_px?: (frame: number) => readonly [number, number];
  /** Blobs of texture in the background; 0 for a plain card. */
  readonly blobs?: number;
  /** Brightness of the card, 0 to 1. */
  readonly card?: number;
}

export interface SyntheticClip {
  readonly title: string;
  readonly scene: Scene;
  /** Frames in the order taken, 12 bits in 16, rows from the top. */
  readonly planes: readonly Uint16Array[];
  readonly truth: readonly FrameTruth[];
}

/** What is so in a frame, to the digit. */
export interface FrameTruth {
  /** Mean over the exposure of the lamps' light, each by its share in the middle of the picture, first row. */
  readonly light: number;
  readonly drop?: { readonly x_px: number; readonly y_px: number; readonly smear_px: number };
}

export const BLACK_CODE = 64;
export const WHITE_CODE = 4095;

/** A generator of its own: xorshift of 32 bits, mixed. */
function randoms(seed: number): { readonly flat: () => number; readonly normal: () => number } {
  let state = (seed * 2654435761 + 0x9e3779b9) >>> 0 || 1;
  const flat = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return ((Math.imul(state, 0x2c1b3c6d) >>> 0) + 0.5) / 4294967296;
  };
  for (let i = 0; i < 16; i += 1) flat();
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const size = Math.sqrt(-2 * Math.log(flat()));
    const turn = 2 * Math.PI * flat();
    spare = size * Math.sin(turn);
    return size * Math.cos(turn);
  };
  return { flat, normal };
}

/** Mean light from `from` to `to`, in closed form. */
export function meanOf(light: LampLight, from_s: number, to_s: number): number {
  if (light.kind === 'steady') return 1;
  const phase = light.phase_rad ?? 0;
  const w = 2 * Math.PI * light.f_Hz;
  if (light.kind === 'ripple')
    return 1 + (light.depth * (Math.sin(w * to_s + phase) - Math.sin(w * from_s + phase))) / (w * (to_s - from_s));
  const low = light.low ?? 0;
  const mean = light.duty + (1 - light.duty) * low;
  // Periods lit up to a time: whole ones, and of the rest what lies before the lamp goes out.
  const lit = (t_s: number): number => {
    const turns = light.f_Hz * t_s + phase / (2 * Math.PI);
    const whole = Math.floor(turns);
    return whole * light.duty + Math.min(turns - whole, light.duty);
  };
  const on = (lit(to_s) - lit(from_s)) / (light.f_Hz * (to_s - from_s));
  return (on + (1 - on) * low) / mean;
}

interface Blob {
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly height: number;
}

function background(
  scene: Scene,
  blobs: readonly Blob[],
  focus: number,
  [dx, dy]: readonly [number, number],
): Float64Array {
  const { width, height, card = 0.35 } = scene;
  const picture = new Float64Array(width * height).fill(card);
  for (const { x, y, size, height: tall } of blobs) {
    // A Gaussian blurred by a Gaussian is one again, wider and lower.
    const spread = size * size + focus * focus;
    const peak = (tall * size * size) / spread;
    const reach = Math.ceil(4 * Math.sqrt(spread));
    const [left, right] = [Math.max(0, Math.floor(x + dx - reach)), Math.min(width - 1, Math.ceil(x + dx + reach))];
    const [top, bottom] = [Math.max(0, Math.floor(y + dy - reach)), Math.min(height - 1, Math.ceil(y + dy + reach))];
    for (let row = top; row <= bottom; row += 1)
      for (let column = left; column <= right; column += 1) {
        const far = (column - x - dx) ** 2 + (row - y - dy) ** 2;
        picture[row * width + column]! += peak * Math.exp(-far / (2 * spread));
      }
  }
  return picture;
}

/** Share of an exposure in which a signal is lit. */
function litShare({ on_s, off_s = Infinity }: SignalLight, from_s: number, exposure_s: number): number {
  return Math.max(0, Math.min(off_s, from_s + exposure_s) - Math.max(on_s, from_s)) / exposure_s;
}

/** What a signal adds to a pixel, lit all through the exposure. */
function signalAt({ x_px, y_px, radius_px, bright }: SignalLight, column: number, row: number): number {
  return bright * Math.min(1, Math.max(0, radius_px + 0.5 - Math.hypot(column - x_px, row - y_px)));
}

/** How much of each pixel the drop covers over an exposure, weighed by the light, and the light alone. */
function dropCover(
  scene: Scene,
  drop: Drop,
  from_s: number,
  lights: (from_s: number, to_s: number) => number,
): Float64Array {
  const { width, height, exposure_s } = scene;
  const to_s = from_s + exposure_s;
  const way = Math.hypot(drop.x_px(to_s) - drop.x_px(from_s), drop.y_px(to_s) - drop.y_px(from_s));
  const steps = Math.max(1, Math.ceil(way / 0.2));
  const cover = new Float64Array(width * height);
  let whole = 0;
  for (let step = 0; step < steps; step += 1) {
    const [begin, end] = [from_s + (exposure_s * step) / steps, from_s + (exposure_s * (step + 1)) / steps];
    const weight = lights(begin, end);
    whole += weight;
    const [x, y] = [drop.x_px((begin + end) / 2), drop.y_px((begin + end) / 2)];
    const reach = drop.radius_px + 1;
    for (let row = Math.max(0, Math.floor(y - reach)); row <= Math.min(height - 1, Math.ceil(y + reach)); row += 1)
      for (
        let column = Math.max(0, Math.floor(x - reach));
        column <= Math.min(width - 1, Math.ceil(x + reach));
        column += 1
      ) {
        const inside = drop.radius_px + 0.5 - Math.hypot(column - x, row - y);
        cover[row * width + column]! += weight * Math.min(1, Math.max(0, inside));
      }
  }
  return cover.map((value) => value / whole);
}

/** Makes a clip. Its title says what it is. */
export function synthetic(title: string, scene: Scene): SyntheticClip {
  const { width, height, frames, rate_fps, exposure_s, lamps, drop, signal, row_s = 0 } = scene;
  const { fullWell_e = 20_000, white_e = 16_000, readNoise_e = 8, blobs: count = 60 } = scene;
  const random = randoms(scene.seed);
  const blobs = Array.from({ length: count }, (): Blob => ({
    x: random.flat() * width,
    y: random.flat() * height,
    size: 0.8 + 2.2 * random.flat(),
    height: 0.5 * random.flat() - 0.2,
  })); // prettier-ignore
  const photons = (mean: number): number => {
    if (mean > 40) return mean + Math.sqrt(mean) * random.normal();
    let [left, counted] = [Math.exp(-mean) > 0 ? random.flat() : 1, 0];
    for (const stop = Math.exp(-mean); left > stop; counted += 1) left *= random.flat();
    return counted;
  };
  const shares = lamps.map(({ share = () => 1 }) =>
    Float64Array.from({ length: width * height }, (_, i) => share(((i % width) + 0.5) / width, (Math.floor(i / width) + 0.5) / height)),
  ); // prettier-ignore
  const total = shares[0]!.map((_, i) => shares.reduce((sum, share) => sum + share[i]!, 0));
  const still = scene.focus_px || scene.shift_px ? undefined : background(scene, blobs, 0, [0, 0]);
  const planes: Uint16Array[] = [];
  const truth: FrameTruth[] = [];
  for (let frame = 0; frame < frames; frame += 1) {
    const from_s = frame / rate_fps;
    const picture = (still ?? background(scene, blobs, scene.focus_px?.(frame) ?? 0, scene.shift_px?.(frame) ?? [0, 0])).slice();
    const middle = Math.floor(height / 2) * width + Math.floor(width / 2);
    const inMiddle = (begin: number, end: number): number =>
      lamps.reduce((sum, { light }, i) => sum + (shares[i]![middle]! / total[middle]!) * meanOf(light, begin, end), 0);
    if (drop) {
      const cover = dropCover(scene, drop, from_s, inMiddle);
      for (let i = 0; i < picture.length; i += 1) picture[i] = picture[i]! + cover[i]! * (drop.bright - picture[i]!);
    }
    const plane = new Uint16Array(width * height);
    const gain = scene.gain?.(frame) ?? 1;
    for (let row = 0; row < height; row += 1) {
      const begun = from_s + row * row_s;
      const lights = lamps.map(({ light }) => meanOf(light, begun, begun + exposure_s));
      for (let column = 0; column < width; column += 1) {
        const i = row * width + column;
        let light = 0;
        for (let lamp = 0; lamp < lamps.length; lamp += 1) light += (shares[lamp]![i]! / total[i]!) * lights[lamp]!;
        const own = signal ? signalAt(signal, column, row) * litShare(signal, begun, exposure_s) : 0;
        const mean = white_e * gain * (Math.max(0, picture[i]!) * light + own);
        const electrons = Math.min(fullWell_e, photons(mean) + readNoise_e * random.normal());
        const code = BLACK_CODE + Math.floor((electrons / fullWell_e) * (WHITE_CODE - BLACK_CODE) + 0.5);
        plane[i] = Math.min(WHITE_CODE, Math.max(0, code));
      }
    }
    planes.push(plane);
    const middle_s = from_s + exposure_s / 2;
    const moved = drop && { x_px: drop.x_px(middle_s), y_px: drop.y_px(middle_s), smear_px: Math.hypot(drop.x_px(from_s + exposure_s) - drop.x_px(from_s), drop.y_px(from_s + exposure_s) - drop.y_px(from_s)) };
    truth.push({ light: gain * inMiddle(from_s, from_s + exposure_s), ...(moved && { drop: moved }) });
  }
  return { title: `SYNTHETIC ${title}`, scene, planes, truth };
} // prettier-ignore
