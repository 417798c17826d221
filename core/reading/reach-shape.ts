import type { ReachShape } from './reach-model.ts';

/** Written by `npm run calibrate`; what it means is said in MODEL.md, C5 and C6. */
export const REACH_SHAPE: ReachShape = {
  own: 0.676,
  called: 1.052,
  last: 0.396,
  joker: 0.99,
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 0.0219, reach: 0.0308 },
    { raw: 0.0593, reach: 0.0805 },
    { raw: 0.0879, reach: 0.1263 },
    { raw: 0.1097, reach: 0.1546 },
    { raw: 0.138, reach: 0.1846 },
    { raw: 0.1686, reach: 0.2219 },
    { raw: 0.1933, reach: 0.2278 },
    { raw: 0.2275, reach: 0.2817 },
    { raw: 0.2757, reach: 0.3519 },
    { raw: 0.3293, reach: 0.4026 },
    { raw: 0.4033, reach: 0.5118 },
    { raw: 0.5698, reach: 0.6253 },
    { raw: 1, reach: 1 },
  ],
};
