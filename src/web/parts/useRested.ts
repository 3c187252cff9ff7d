import { useEffect, useState } from 'react';

/** A value once it has stayed the same for a while: what comes and goes at once is never seen through it. */
export function useRested<Value>(value: Value, rest_ms: number): Value {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), rest_ms);
    return () => clearTimeout(timer);
  }, [value, rest_ms]);
  return rested;
}
