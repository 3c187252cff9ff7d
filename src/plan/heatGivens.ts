/** What a shot's model is given of heat and bright light: the light on its product by kind of lamp, and its brightest lamps. */
import type { Shoot } from '../document/schema.ts';
import { USUAL_AIR_degC, USUAL_SKIN_m } from '../laws/heat/products.ts';
import { glareOf, LOOK_s, worstGlare } from './eyes.ts';
import { put, viewOf, type Effective, type GivenEntry, type Givens } from './givens.ts';
import {
  HEAT_KINDS,
  lightOnProduct,
  PRODUCT_LIGHT,
  USUAL_START_degC,
  warmsOf,
  type HeatKind,
  type ProductLight,
} from './heat.ts';
import { meteredLight } from './meter.ts';
import { isUnread } from './unread.ts';

/** Twice the shortest time is as credible: half as much taken up, or a fifth melted before anybody sees it; common practice, no source. */
const LONGER_RATIO = 2;

/** What a product's time in the light is worked out from; nothing where it is written, or nobody says what it warms like. */
function lifeGivens(shoot: Shoot, { shot, at, within }: Effective): Givens {
  const givens: Givens = new Map();
  const product = warmsOf(shoot, shot);
  const id = shot.hero.product;
  if (id === undefined) return givens;
  const of = shoot.kit.products[id];
  const path = `/kit/products/${id}`;
  if (product === undefined) {
    const isLost = of && isUnread(of, 'warms') && shot.hero.life_s === undefined && !isUnread(shot.hero, 'life');
    if (isLost) givens.set('heroLife_s', { title: 'What the product warms like', value: NaN, path: `${path}/warms`, spread: 0, isUnread: true });
    return givens;
  }
  const lit = shot.lighting !== undefined && shoot.lighting[shot.lighting] !== undefined ? lightOnProduct(shoot, shot.lighting, { view: viewOf(shot), product }) : undefined;
  const isLost = isUnread(shot, 'lighting') || isUnread(shot, 'azimuth') || isUnread(shot, 'elevation');
  const lack = !lit || isLost ? { title: 'Light on the product', path: `${at('lighting')}/lighting`, isUnread: isLost } : 'parts' in lit ? undefined : lit;
  // What is lacking is lacked once, whatever kinds of lamps there are.
  for (const kind of HEAT_KINDS)
    givens.set(PRODUCT_LIGHT[kind].light, lit && 'parts' in lit && !lack ? partOf(lit, kind) : { title: 'Light on the product', value: 0, path: '', spread: 0 });
  if (lack) givens.set(PRODUCT_LIGHT.tungsten.light, { title: 'what' in lack && lack.what !== undefined ? `${lack.title}: ${lack.what}` : lack.title, value: NaN, path: lack.path, spread: 0, ...(lack.isUnread ? { isUnread: true } : {}) });
  put(givens, of ?? {}, path, { name: 'productStart_degC', title: 'Product at the start', key: 'start', value: of?.start_degC, otherwise: { value: USUAL_START_degC[product], why: 'on the warm side of how it usually comes to the set; common practice, no source' } });
  put(givens, shoot.shoot, '/shoot', { name: 'air_degC', title: 'Air on the set', key: 'air', value: shoot.shoot.air_degC, otherwise: { value: USUAL_AIR_degC, why: 'a warm stage' } });
  put(givens, of ?? {}, path, { name: 'skin_m', title: 'Thickness of what must not change', key: 'thickness', value: of?.thickness_m, otherwise: { value: USUAL_SKIN_m, why: 'a skin of two millimetres shows first' } });
  put(givens, of ?? {}, path, { name: 'hold_s', title: 'How long it holds with the lights off', key: 'hold', value: of?.hold_s, spread: of?.holdSpread_s, usual: { ratio: 0.3 } });
  givens.set('timesShortestRatio', { title: 'Times the shortest credible time', value: 1, path: `${within('hero', 'life')}/life`, spread: 0, spreadAbove: LONGER_RATIO - 1, assumed: 'the shortest counts, and twice that is as credible; a timed piece says it better' });
  return givens;
} // prettier-ignore

/** The light of one kind of lamp; what was assumed of it stands with the kind it was assumed to be. */
function partOf({ parts, says, path, assumed }: ProductLight, kind: HeatKind): GivenEntry {
  const { illuminance_lx, spread_lx } = parts[kind];
  const title = `Light ${PRODUCT_LIGHT[kind].says} on the product`;
  if (illuminance_lx === 0) return { title, value: 0, path, spread: 0 };
  const isFirst = kind === HEAT_KINDS.find((each) => parts[each].illuminance_lx > 0);
  const entry = { title: `${title}, ${says}`, value: illuminance_lx, spread: spread_lx };
  return assumed && isFirst ? { ...entry, path: assumed.path, assumed: assumed.why } : { ...entry, path };
}

/** The lamps that ask for most distance from an eye, each under the limit by which it does. */
function eyeGivens(shoot: Shoot, { shot }: Effective): Givens {
  const givens: Givens = new Map();
  const setupId = shot.lighting;
  if (setupId === undefined || shoot.lighting[setupId] === undefined) return givens;
  const worst = worstGlare(glareOf(shoot, setupId, meteredLight(shoot, setupId, viewOf(shot)).lamps));
  if (!worst) return givens;
  const { blue, hot } = worst;
  const lampPath = (id: string) => `/lighting/${setupId}/lamps/${id}`;
  const set = (name: string, entry: Omit<GivenEntry, 'spread'>) => givens.set(name, { spread: 0, ...entry });
  set('glareDistance_m', { title: `From ${blue.title} to the subject`, value: blue.distance_m, path: `${lampPath(blue.id)}/at` });
  set('glareLuminance_cd_per_m2', { title: `Brightness of ${blue.title} to look into`, value: blue.luminance_cd_per_m2, path: lampPath(blue.id) });
  set('glareDiameter_m', { title: `What glows of ${blue.title}, as a round`, value: blue.diameter_m, path: `/kit/lamps/${blue.lamp}/face` });
  set('glareBlue_lm_per_W', { title: 'Lumens beside each blue watt', value: blue.blueEfficacy_lm_per_W, path: `/kit/lamps/${blue.lamp}/colour`, assumed: 'of warm or of daylight white, at its bluest' });
  set('hotLampDistance_m', { title: `From ${hot.title} to the subject`, value: hot.distance_m, path: `${lampPath(hot.id)}/at` });
  set('infraredAtSubject_W_per_m2', { title: `Infrared of ${hot.title} at the subject, at its most`, value: hot.infrared_W_per_m2, path: lampPath(hot.id) });
  set('lookTime_s', { title: 'Time of a day that somebody looks into it', value: LOOK_s, path: `/lighting/${setupId}/lamps`, assumed: 'what the lowest class of lamps is reckoned with; from memory' });
  return givens;
} // prettier-ignore

/** Everything a shot's model is given of heat and bright light. */
export function heatGivens(shoot: Shoot, effective: Effective): Givens {
  return new Map([...lifeGivens(shoot, effective), ...eyeGivens(shoot, effective)]);
}
