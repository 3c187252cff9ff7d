/** A stream of server-sent events that is written as fast as it is read, and no faster. */

/** Shows both ends that the other is still there. */
export const HEARTBEAT = ':\n\n';
export const HEARTBEAT_ms = 15_000;
const RECONNECT_ms = 1000;

export interface EventSource {
  /** Called once somebody reads: a HEAD request makes a stream that nobody reads, nor ever ends. */
  readonly begin: () => void;
  /** The next message, when there is one; undefined at the end. */
  readonly next: () => Promise<string | undefined>;
  /** Called when whoever reads is gone, or a message cannot be had. */
  readonly end: () => void;
}

export function eventStream({ begin, next, end }: EventSource): ReadableStream<Uint8Array> {
  const bytes = new TextEncoder();
  let isBegun = false;
  return new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(bytes.encode(`retry: ${RECONNECT_ms}\n\n`)),
    pull: async (controller) => {
      if (!isBegun) begin();
      isBegun = true;
      try {
        const text = await next();
        if (text === undefined) controller.close();
        else controller.enqueue(bytes.encode(text));
      } catch (error) {
        end();
        throw error;
      }
    },
    cancel: end,
  });
}
