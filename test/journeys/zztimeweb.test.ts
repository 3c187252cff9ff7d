import { vi } from 'vitest';
vi.mock('../../tools/run.mjs', async (original) => ({ ...(await original<object>()), ROOT: '/tmp/timeweb' }));
await import(`./${process.env['JOURNEY'] ?? 'time'}.test.ts`);
