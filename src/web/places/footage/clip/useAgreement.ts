import { useCallback, useEffect, useRef, useState } from 'react';
import { isMotionReduced } from '../../../state/browser.ts';
import { afterPress, type PatchPress, type PatchStep } from '../../flicker/patchPlay.ts';

export interface Agreement {
  /** How far somebody has gone towards playing what may flash. */
  readonly step: PatchStep;
  /** It may play: somebody was warned and agreed, or there is nothing to warn of. */
  readonly isAgreed: boolean;
  readonly press: (press: PatchPress) => void;
}

/** Whether what may flash may play: every press is a person's own, and none is remembered. */
export function useAgreement(isToWarn: boolean): Agreement {
  const [step, setStep] = useState<PatchStep>('off');
  const press = useCallback((what: PatchPress) => {
    setStep((was) => afterPress(was, what, { isMotionReduced: isMotionReduced() }));
  }, []);
  return { step, isAgreed: step === 'playing' || !isToWarn, press };
}

/** Whoever agrees has pressed Play: it plays. */
export function useOnceAgreed({ step, isAgreed }: Agreement, play: () => void): void {
  const wasAgreed = useRef(isAgreed);
  useEffect(() => {
    if (step === 'playing' && !wasAgreed.current) play();
    wasAgreed.current = isAgreed;
  }, [step, isAgreed, play]);
}
