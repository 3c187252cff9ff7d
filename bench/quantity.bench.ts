/** Reading quantities as people write them, against the fastest reading of bare numbers there is. */
import { parseQuantity } from '../src/base/quantity.ts';
import type { KindName } from '../src/base/kinds.ts';
import { bench, seededNumbers } from './harness.ts';

const COUNT = 10_000;

const draw = seededNumbers(1);
const WRITTEN: readonly (readonly [KindName, (size: number) => string])[] = [
  ['time', (size) => `1/${Math.round(100 + size * 20_000)} s`],
  ['length', (size) => `${(size * 900).toFixed(1)} mm`],
  ['illuminance', (size) => `${(size * 200).toFixed(1)} klx`],
  ['tStop', (size) => `T${(1.4 + size * 14).toFixed(1)}`],
  ['angle', (size) => `${(size * 360).toFixed(1)}°`],
];
const texts = Array.from({ length: COUNT }, (_, index) => {
  const [kind, write] = WRITTEN[index % WRITTEN.length]!;
  return [kind, write(draw())] as const;
});
const json = JSON.stringify(Array.from({ length: COUNT }, () => Number((draw() * 1000).toFixed(3))));

await bench([
  {
    title: `read ${COUNT} quantities`,
    a: {
      name: 'parseQuantity',
      run: () =>
        texts.reduce((sum, [kind, text]) => {
          const read = parseQuantity(kind, text);
          return read.ok ? sum + read.value : sum;
        }, 0),
    },
    b: { name: 'JSON numbers', run: () => (JSON.parse(json) as number[]).reduce((sum, value) => sum + value, 0) },
  },
]);
