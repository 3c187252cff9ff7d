/** The model of one shot: every number of its plan, from what the person asked for to what each limit has and needs. */
import { airyDiameterInPixels } from '../laws/lens/diffraction.ts';
import { closeUpIlluminance, closeUpIndex, closeUpIndexByLuminance, closeUpLuminance } from '../laws/exposure/chain.ts';
import { circleOfConfusionByDiagonal } from '../laws/lens/circleOfConfusion.ts';
import { cropHeight, cropWidth } from '../laws/lens/crop.ts';
import { depthFar, depthNear, depthOfField, fNumberForDepthWanted } from '../laws/lens/depthOfField.ts';
import { exposureForBlur, imageSpeed, motionBlur } from '../laws/motion/blur.ts';
import { exposureTimeOfAngle, longestExposure, shutterAngle } from '../laws/exposure/shutter.ts';
import { fNumberOfLens } from '../laws/exposure/tStop.ts';
import { frameSize } from '../laws/buffer/frame.ts';
import { highlightHeadroom, lowestIndex } from '../laws/exposure/highlights.ts';
import { indexAtNoise, greySignalToNoise } from '../laws/exposure/noise.ts';
import { keptSize, saveTime } from '../laws/buffer/save.ts';
import {
  extensionNeeded,
  lensExtension,
  magnificationOfFrame,
  objectDistance,
  sensorToSubject,
} from '../laws/lens/magnification.ts';
import { fieldAtCrop } from '../laws/lens/reach.ts';
import { imageCircleNeeded, sampledPitch, windowDiagonal, windowWidth } from '../laws/lens/window.ts';
import { recordTime } from '../laws/buffer/recordTime.ts';
import { takesAtConfidence } from '../laws/chance/takes.ts';
import { captureRateAtSpeed, captureRateWanted, captureTime, screenTime } from '../laws/time/expansion.ts';
import { workingDistance } from '../laws/lens/workingDistance.ts';
import type { ProductKind } from '../laws/heat/products.ts';
import { modelBuilder, type Builder, type Model } from './model.ts';
import { addEyes, addLife } from './heatModel.ts';
import { addTiming } from './timing/steps.ts';
import type { TimingStructure } from './timing/structure.ts';
import {
  settableExposureAtOrBelow,
  settableIndexAtOrAbove,
  settableIndexAtOrBelow,
  settableRateAtOrAbove,
} from './settable.ts';

/** What decides which steps a shot's model has. */
export interface Structure {
  readonly rateBy: 'fixed' | 'speed' | 'duration';
  /** What the recording must cover: the action's duration, a profile's real time, or the screen time turned back. */
  readonly coverBy: 'duration' | 'profile' | 'screen';
  readonly shutterBy: 'time' | 'angle' | 'solved';
  readonly indexBy: 'fixed' | 'solved';
  readonly readBy: 'illuminance' | 'luminance';
  readonly unsharpnessBy: 'pixels' | 'diagonal';
  readonly deliverableCount: number;
  /** How long the product lasts: as written, or worked out as one that warms like this. */
  readonly lifeBy: 'written' | ProductKind;
  /** Whether lamps can be told about that are bright to look into. */
  readonly eyesBy: 'lamps' | 'nothing';
  readonly timing: TimingStructure;
}

const models = new Map<string, Model>();

/** The model for a structure; made once. */
export function shotModel(structure: Structure): Model {
  const key = JSON.stringify(structure);
  let model = models.get(key);
  if (!model) models.set(key, (model = buildShotModel(structure)));
  return model;
}

/** Light short of the far end of a lens is as good as unlimited on a table: keeps figures finite. */
const FARTHEST_DEPTH_m = 1000;

function buildShotModel(structure: Structure): Model {
  const m = modelBuilder();
  addTime(m, structure);
  addPicture(m, structure);
  addLens(m);
  addShutter(m, structure);
  addLight(m, structure);
  addSharpness(m, structure);
  addMemory(m);
  addProduct(m);
  if (structure.lifeBy !== 'written') addLife(m, structure.lifeBy);
  if (structure.eyesBy === 'lamps') addEyes(m);
  addTiming(m, structure.timing);
  if (structure.coverBy === 'profile') addRamp(m);
  m.given(
    'maxRate_fps',
    'screenTimeWanted_s',
    'highlightsWanted_stops',
    'signalToNoiseWanted_dB',
    'depthWanted_m',
    'blurWanted_px',
  );
  m.given(
    'diffractionWanted_px',
    'reachWidth_m',
    'reachHeight_m',
    'imageCircle_m',
    'closeFocus_m',
    'heroLife_s',
    'lightOn_s',
  );
  if (structure.coverBy === 'profile') m.given('screenTime_s');
  m.given('shortestExposure_s', 'widestStop', 'narrowestStop', 'lowestIsoSpeed', 'highestIsoSpeed');
  for (let i = 0; i < structure.deliverableCount; i += 1) m.given(`deliveredWidth${i}_px`);
  return m.build();
}

function addTime(m: Builder, { rateBy, coverBy }: Structure): void {
  if (rateBy === 'speed')
    m.law('captureRateWanted_fps', captureRateAtSpeed, {
      playbackSpeedFraction: 'slowestFraction',
      playRate_fps: 'playRate_fps',
    });
  if (rateBy === 'duration')
    m.law('captureRateWanted_fps', captureRateWanted, {
      screenTime_s: 'screenTimeWanted_s',
      captureTime_s: 'actionTime_s',
      playRate_fps: 'playRate_fps',
    });
  if (rateBy !== 'fixed')
    m.choose(
      'captureRate_fps',
      { title: 'Frame rate', says: 'rounded up to a whole number of frames a second' },
      { wanted: 'captureRateWanted_fps' },
      ({ wanted }) => settableRateAtOrAbove(wanted!),
    );
  if (coverBy === 'screen')
    m.law(
      'coveredTime_s',
      captureTime,
      { screenTime_s: 'screenTimeWanted_s', captureRate_fps: 'captureRate_fps', playRate_fps: 'playRate_fps' },
      'Real time to cover',
    );
  else
    m.choose(
      'coveredTime_s',
      {
        title: 'Real time to cover',
        says: coverBy === 'profile' ? 'the real time that the speed profile uses' : 'the action from start to end',
      },
      { time: coverBy === 'profile' ? 'profileTime_s' : 'actionTime_s' },
      ({ time }) => time!,
    );
  m.choose(
    'recordedTime_s',
    { title: 'Real time to record', says: 'what must be covered, with handles before and after' },
    { covered: 'coveredTime_s', handles: 'handles_s' },
    ({ covered, handles }) => covered! + 2 * handles!,
  );
  if (coverBy === 'duration')
    m.law('screenTime_s', screenTime, {
      captureTime_s: 'actionTime_s',
      captureRate_fps: 'captureRate_fps',
      playRate_fps: 'playRate_fps',
    });
}

function addPicture(m: Builder, { deliverableCount }: Structure): void {
  m.law('sampledPitch_m', sampledPitch, { pixelPitch_m: 'pixelPitch_m', binningCount: 'binningCount' });
  m.law('windowWidth_m', windowWidth, {
    pixelCount: 'widthCount',
    pixelPitch_m: 'pixelPitch_m',
    binningCount: 'binningCount',
  });
  m.law('windowDiagonal_m', windowDiagonal, {
    widthCount: 'widthCount',
    heightCount: 'heightCount',
    pixelPitch_m: 'pixelPitch_m',
    binningCount: 'binningCount',
  });
  for (let i = 0; i < deliverableCount; i += 1) {
    const crop = {
      widthCount: 'widthCount',
      heightCount: 'heightCount',
      aspectRatio: `aspect${i}Ratio`,
      reframeFraction: 'reframeFraction',
    };
    m.law(`cropWidth${i}_px`, cropWidth, crop);
    m.law(`cropHeight${i}_px`, cropHeight, crop);
  }
  m.choose(
    'cropWidth_m',
    { title: 'Width of the first crop on the sensor', says: 'its pixels times the distance between them' },
    { crop: 'cropWidth0_px', pitch: 'sampledPitch_m' },
    ({ crop, pitch }) => crop! * pitch!,
  );
  m.choose(
    'deliveredPitch_m',
    {
      title: 'Pixel of the first deliverable, on the sensor',
      says: 'the width of its crop on the sensor over its pixels',
    },
    { crop: 'cropWidth_m', delivered: 'deliveredWidth0_px' },
    ({ crop, delivered }) => crop! / delivered!,
  );
  m.law('magnificationRatio', magnificationOfFrame, { subjectWidth_m: 'frameWidth_m', imageWidth_m: 'cropWidth_m' });
  m.choose(
    'capturedField_m',
    {
      title: 'Width of the scene in the whole picture',
      says: 'the frame width, grown from the first crop to all pixels across',
    },
    { frame: 'frameWidth_m', crop: 'cropWidth0_px', across: 'widthCount' },
    ({ frame, crop, across }) => (frame! * across!) / crop!,
  );
  m.choose(
    'capturedFieldHeight_m',
    { title: 'Height of the scene in the whole picture', says: 'its width in the shape of the recorded picture' },
    { field: 'capturedField_m', across: 'widthCount', down: 'heightCount' },
    ({ field, across, down }) => (field! * down!) / across!,
  );
  for (let i = 0; i < deliverableCount; i += 1) {
    m.law(
      `fieldWidth${i}_m`,
      fieldAtCrop,
      { fieldWidth_m: 'capturedField_m', cropWidth_px: `cropWidth${i}_px`, widthCount: 'widthCount' },
      'Width of the scene in this crop',
    );
    m.law(
      `fieldHeight${i}_m`,
      fieldAtCrop,
      { fieldWidth_m: 'capturedFieldHeight_m', cropWidth_px: `cropHeight${i}_px`, widthCount: 'heightCount' },
      'Height of the scene in this crop',
    );
  }
}

/** Magnification of something as good as infinitely far. */
const FAR_RATIO = 1e-6;

function addLens(m: Builder): void {
  const at = { focalLength_mm: 'focalLength_mm', magnificationRatio: 'magnificationRatio' };
  m.law('objectDistance_m', objectDistance, at);
  m.law('sensorToSubject_m', sensorToSubject, at);
  m.law('extensionNeeded_m', extensionNeeded, at);
  m.law('workingDistance_m', workingDistance, {
    sensorToSubject_m: 'sensorToSubject_m',
    frontToSensor_m: 'frontToSensor_m',
    addedLength_m: 'extensionNeeded_m',
  });
  m.choose(
    'clearanceNeeded_m',
    {
      title: 'Clearance needed',
      says: 'the larger of the clearance asked for and how far the action flies towards the lens',
      optional: ['asked', 'reach'],
    },
    { asked: 'clearanceWanted_m', reach: 'reachTowardsLens_m' },
    ({ asked, reach }) => (Number.isNaN(asked!) ? reach! : Number.isNaN(reach!) ? asked! : Math.max(asked!, reach!)),
  );
  m.law('lensExtension_m', lensExtension, { focalLength_mm: 'focalLength_mm', closeFocus_m: 'closeFocus_m' });
  m.choose(
    'nearestMagnificationRatio',
    { title: 'Greatest magnification', says: 'the lens’s own extension and the tubes, over the focal length' },
    { own: 'lensExtension_m', tubes: 'tubeLength_m', focalLength_mm: 'focalLength_mm' },
    ({ own, tubes, focalLength_mm }) => ((own! + tubes!) / focalLength_mm!) * 1000,
  );
  m.law(
    'nearestFocusWithTubes_m',
    sensorToSubject,
    { focalLength_mm: 'focalLength_mm', magnificationRatio: 'nearestMagnificationRatio' },
    'Nearest focus with the tubes',
  );
  m.choose(
    'nearestFocus_m',
    {
      title: 'Nearest focus',
      says: 'what the lens is marked with; with tubes, where they bring it',
      optional: ['withTubes'],
    },
    { marked: 'closeFocus_m', tubes: 'tubeLength_m', withTubes: 'nearestFocusWithTubes_m' },
    ({ marked, tubes, withTubes }) => (tubes! > 0 ? withTubes! : marked!),
  );
  m.choose(
    'farthestMagnificationRatio',
    { title: 'Least magnification', says: 'the tubes alone, over the focal length' },
    { tubes: 'tubeLength_m', focalLength_mm: 'focalLength_mm' },
    ({ tubes, focalLength_mm }) => Math.max((tubes! / focalLength_mm!) * 1000, FAR_RATIO),
  );
  m.law(
    'farthestFocus_m',
    sensorToSubject,
    { focalLength_mm: 'focalLength_mm', magnificationRatio: 'farthestMagnificationRatio' },
    'Farthest focus with the tubes',
  );
  m.law('imageCircleNeeded_m', imageCircleNeeded, { diagonal_m: 'windowDiagonal_m' });
}

function addShutter(m: Builder, { shutterBy }: Structure): void {
  m.law('longestExposure_s', longestExposure, { frameRate_fps: 'captureRate_fps', deadTime_s: 'deadTime_s' });
  if (shutterBy !== 'time')
    m.law('exposureByAngle_s', exposureTimeOfAngle, {
      shutterAngle_deg: 'angleWanted_deg',
      frameRate_fps: 'captureRate_fps',
    });
  if (shutterBy === 'angle')
    m.choose(
      'exposureTime_s',
      { title: 'Shutter', says: 'the angle that was fixed, at this rate' },
      { angle: 'exposureByAngle_s' },
      ({ angle }) => angle!,
    );
  if (shutterBy === 'solved') {
    m.law('exposureByBlur_s', exposureForBlur, {
      blur_px: 'blurWanted_px',
      speed_m_per_s: 'speed_m_per_s',
      magnificationRatio: 'magnificationRatio',
      sampledPitch_m: 'deliveredPitch_m',
    });
    m.choose(
      'exposureTime_s',
      {
        title: 'Shutter',
        says: 'the longest that the angle, the blur and the frame allow, rounded to what can be set',
        optional: ['byBlur', 'shortest'],
      },
      {
        byAngle: 'exposureByAngle_s',
        byBlur: 'exposureByBlur_s',
        longest: 'longestExposure_s',
        shortest: 'shortestExposure_s',
      },
      ({ byAngle, byBlur, longest, shortest }) => {
        const wanted = Math.min(byAngle!, longest!, Number.isNaN(byBlur!) ? Infinity : byBlur!);
        return Math.max(settableExposureAtOrBelow(wanted), Number.isNaN(shortest!) ? 0 : shortest!);
      },
    );
  }
  if (shutterBy === 'time')
    // A time that was fixed may be longer than the frame, which the limit says; the law knows no such angle.
    m.choose(
      'shutterAngle_deg',
      { title: 'Shutter angle', says: 'the share of each frame that the shutter is open, of 360°' },
      { time: 'exposureTime_s', rate: 'captureRate_fps' },
      ({ time, rate }) => 360 * time! * rate!,
    );
  else m.law('shutterAngle_deg', shutterAngle, { exposureTime_s: 'exposureTime_s', frameRate_fps: 'captureRate_fps' });
  m.law('blur_px', motionBlur, {
    speed_m_per_s: 'speed_m_per_s',
    magnificationRatio: 'magnificationRatio',
    exposureTime_s: 'exposureTime_s',
    sampledPitch_m: 'deliveredPitch_m',
  });
  m.law('imageSpeed_px_per_s', imageSpeed, {
    speed_m_per_s: 'speed_m_per_s',
    magnificationRatio: 'magnificationRatio',
    sampledPitch_m: 'deliveredPitch_m',
  });
  m.choose(
    'frameStep_px',
    { title: 'Movement from frame to frame', says: 'the speed in the picture over the frame rate' },
    { speed: 'imageSpeed_px_per_s', rate: 'captureRate_fps' },
    ({ speed, rate }) => speed! / rate!,
  );
}

const lower = (value: number, stops: number): number => value * 2 ** -stops;

function addLight(m: Builder, { indexBy, readBy }: Structure): void {
  m.choose(
    'lightMagnificationRatio',
    { title: 'Magnification that costs light', says: 'none where the marked stop already allows for close focus' },
    { ratio: 'magnificationRatio', allowed: 'stopIncludesExtension' },
    ({ ratio, allowed }) => (allowed === 1 ? 0 : ratio!),
  );
  const unit = readBy === 'illuminance' ? 'lx' : 'cd_per_m2';
  const have = `${readBy}_${unit}`;
  m.choose(
    `greyLight_${unit}`,
    {
      title: 'Light that middle grey is exposed by',
      says: 'the reading, lowered by the stops it stands above middle grey',
    },
    { reading: have, offset: 'readingOffset_stops' },
    ({ reading, offset }) => lower(reading!, offset!),
  );
  const chain = {
    tStop: 'stop',
    magnificationRatio: 'lightMagnificationRatio',
    pupilMagnificationRatio: 'pupilMagnificationRatio',
    filterLoss_stops: 'filterLoss_stops',
    exposureTime_s: 'exposureTime_s',
  };
  const constant = readBy === 'illuminance' ? { meterConstant_lx_s: 'meterConstant_lx_s' } : {};
  if (indexBy === 'solved') {
    if (readBy === 'illuminance')
      m.law('isoSpeedNeeded', closeUpIndex, { illuminance_lx: 'greyLight_lx', ...chain, ...constant });
    else m.law('isoSpeedNeeded', closeUpIndexByLuminance, { luminance_cd_per_m2: 'greyLight_cd_per_m2', ...chain });
    m.law(
      'isoSpeedAtNoise',
      indexAtNoise,
      {
        signalToNoise_dB: 'signalToNoiseWanted_dB',
        pixelPitch_m: 'pixelPitch_m',
        quantumEfficiencyFraction: 'quantumEfficiencyFraction',
        readNoise_e: 'readNoise_e',
        binningCount: 'binningCount',
      },
      'Highest index quiet enough',
    );
    m.law(
      'isoSpeedAtHighlights',
      lowestIndex,
      {
        wantedHeadroom_stops: 'highlightsWanted_stops',
        baseHeadroom_stops: 'headroomAtBase_stops',
        baseIsoSpeed: 'baseIsoSpeed',
      },
      'Lowest index with room for highlights',
    );
    m.choose(
      'isoSpeed',
      {
        title: 'Exposure index',
        as: 'isoSpeed',
        says: 'the lowest that the light allows, within the camera’s range and, where it can be, quiet enough and with room for highlights',
        optional: ['needed', 'lowest', 'highest', 'quiet', 'roomy'],
      },
      {
        needed: 'isoSpeedNeeded',
        base: 'baseIsoSpeed',
        lowest: 'lowestIsoSpeed',
        highest: 'highestIsoSpeed',
        quiet: 'isoSpeedAtNoise',
        roomy: 'isoSpeedAtHighlights',
      },
      chooseIndex,
    );
  }
  if (readBy === 'illuminance')
    m.law('greyLightNeeded_lx', closeUpIlluminance, { ...chain, ...constant, isoSpeed: 'isoSpeed' });
  else m.law('greyLightNeeded_cd_per_m2', closeUpLuminance, { ...chain, isoSpeed: 'isoSpeed' });
  m.choose(
    `lightNeeded_${unit}`,
    {
      title: readBy === 'illuminance' ? 'Illuminance needed' : 'Luminance needed',
      says: 'what middle grey needs, raised by the stops the reading stands above it',
    },
    { grey: `greyLightNeeded_${unit}`, offset: 'readingOffset_stops' },
    ({ grey, offset }) => lower(grey!, -offset!),
  );
  m.choose(
    'overexposure_stops',
    {
      title: 'Light beyond what is needed',
      says: 'stops of light above the need; none where there is no reading',
      optional: ['have', 'need'],
    },
    { have, need: `lightNeeded_${unit}` },
    ({ have: light, need }) => (light! > need! ? Math.log2(light! / need!) : 0),
  );
  m.law('headroom_stops', highlightHeadroom, {
    baseHeadroom_stops: 'headroomAtBase_stops',
    isoSpeed: 'isoSpeed',
    baseIsoSpeed: 'baseIsoSpeed',
    overexposure_stops: 'overexposure_stops',
  });
  m.law('signalToNoise_dB', greySignalToNoise, {
    isoSpeed: 'isoSpeed',
    pixelPitch_m: 'pixelPitch_m',
    quantumEfficiencyFraction: 'quantumEfficiencyFraction',
    readNoise_e: 'readNoise_e',
    binningCount: 'binningCount',
  });
}

const or = (value: number | undefined, fallback: number): number =>
  value === undefined || Number.isNaN(value) ? fallback : value;

function chooseIndex({ needed, base, lowest, highest, quiet, roomy }: Record<string, number>): number {
  const [least, most] = [or(lowest, 0), or(highest, Infinity)];
  // The ends of the camera's range can be set whether or not they stand in the series.
  const bottom = or(roomy, 0) <= least ? least : Math.min(settableIndexAtOrAbove(roomy!), most);
  const top = or(quiet, Infinity) >= most ? most : settableIndexAtOrBelow(quiet!);
  // Nobody rates a sensor below its base unasked: where there is light to spare the stop closes instead.
  const usual = Math.min(or(base, 0), top);
  return Math.max(bottom, usual, Math.min(settableIndexAtOrAbove(or(needed, base!)), top));
}

function addSharpness(m: Builder, { unsharpnessBy }: Structure): void {
  m.law('fNumber', fNumberOfLens, { tStop: 'stop', transmittanceFraction: 'transmittanceFraction' });
  if (unsharpnessBy === 'pixels')
    m.choose(
      'circleOfConfusion_m',
      {
        title: 'Blur circle still called sharp',
        says: 'the pixels asked for, of the first deliverable, brought back to the sensor',
      },
      { pixels: 'unsharpnessWanted_px', pitch: 'deliveredPitch_m' },
      ({ pixels, pitch }) => pixels! * pitch!,
    );
  else
    m.law('circleOfConfusion_m', circleOfConfusionByDiagonal, {
      diagonal_m: 'windowDiagonal_m',
      divisor: 'diagonalDivisor',
    });
  const lens = {
    focalLength_mm: 'focalLength_mm',
    magnificationRatio: 'magnificationRatio',
    pupilMagnificationRatio: 'pupilMagnificationRatio',
    circleOfConfusion_m: 'circleOfConfusion_m',
  };
  m.law('fNumberForDepth', fNumberForDepthWanted, { depthWanted_m: 'depthWanted_m', ...lens });
  m.law('sharpDepth_m', depthOfField, { ...lens, fNumber: 'fNumber' }, 'Depth that is sharp');
  m.law('sharpNear_m', depthNear, { ...lens, fNumber: 'fNumber' }, 'Sharp in front of the subject');
  m.law('sharpFar_m', depthFar, { ...lens, fNumber: 'fNumber' }, 'Sharp behind the subject');
  m.choose(
    'depth_m',
    { title: 'Depth that is sharp', says: `no more than ${FARTHEST_DEPTH_m} m is counted` },
    { depth: 'sharpDepth_m' },
    ({ depth }) => Math.min(depth!, FARTHEST_DEPTH_m),
  );
  m.law('diffraction_px', airyDiameterInPixels, {
    fNumber: 'fNumber',
    magnificationRatio: 'magnificationRatio',
    pupilMagnificationRatio: 'pupilMagnificationRatio',
    pixelPitch_m: 'deliveredPitch_m',
  });
}

function addMemory(m: Builder): void {
  m.law('frameSize_B', frameSize, {
    widthCount: 'widthCount',
    heightCount: 'heightCount',
    bitDepthCount: 'bitDepthCount',
  });
  m.choose(
    'memoryPart_B',
    { title: 'Memory for one recording', says: 'the memory, shared among its partitions' },
    { memory: 'memory_B', parts: 'partitionCount' },
    ({ memory, parts }) => memory! / parts!,
  );
  m.law('recordTime_s', recordTime, {
    memory_B: 'memoryPart_B',
    frameSize_B: 'frameSize_B',
    frameRate_fps: 'captureRate_fps',
  });
  m.law('keptSize_B', keptSize, {
    frameSize_B: 'frameSize_B',
    frameRate_fps: 'captureRate_fps',
    keptTime_s: 'recordedTime_s',
  });
  m.law('saveTime_s', saveTime, { size_B: 'keptSize_B', linkRate_B_per_s: 'saveRate_B_per_s' });
}

/** Pieces of the product: those on hand against those that takes use up, nine days in ten. */
function addProduct(m: Builder): void {
  m.law('takesNeededCount', takesAtConfidence, { goodTakeCount: 'goodTakeCount', goodTakeFraction: 'goodTakeFraction' }, 'Takes to allow for, nine days in ten');
  m.choose(
    'piecesNeededCount',
    { title: 'Pieces needed', as: 'count', says: 'the takes to allow for times the pieces that each uses' },
    { takes: 'takesNeededCount', each: 'perTakeCount' },
    ({ takes, each }) => takes! * each!,
  );
  m.choose(
    'piecesLeftCount',
    { title: 'Pieces for this shot', as: 'count', says: 'the pieces on hand, less what other shots need of them' },
    { onHand: 'pieceCount', others: 'piecesElsewhereCount' },
    ({ onHand, others }) => onHand! - others!,
  );
} // prettier-ignore

/** How the fast parts of a profile will look, where each frame shown blends many that were taken. */
function addRamp(m: Builder): void {
  m.choose(
    'blendedFrameCount',
    { title: 'Frames blended at the fastest', as: 'count', says: 'half of what is taken while one frame is shown' },
    { fastest: 'fastestFraction', taken: 'captureRate_fps', shown: 'playRate_fps' },
    ({ fastest, taken, shown }) => (fastest! * taken!) / shown! / 2,
  );
  m.choose(
    'rampStep_px',
    { title: 'Gap between blended exposures', says: 'movement while the shutter is closed' },
    { speed: 'imageSpeed_px_per_s', taken: 'captureRate_fps', open: 'exposureTime_s' },
    ({ speed, taken, open }) => speed! * Math.max(0, 1 / taken! - open!),
  );
}
