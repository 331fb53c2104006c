/**
 * Property tests draw the same cases every time, so that a test fails because of a change and not of luck. Others are
 * drawn with a seed of one's own: `SEED=7 npx vitest run`.
 */
import fc from 'fast-check';

fc.configureGlobal({ seed: Number(process.env['SEED'] ?? 1845) });
