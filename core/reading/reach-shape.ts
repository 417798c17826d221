/** Written by `npm run calibrate -- --shape`; what it means is said in MODEL.md, MD-C5 and MD-C6. */
export const REACH_SHAPE = {
  own: 0.8150434782608695,
  called: 1.1021,
  last: 0.48598130841121495,
  joker: 0.8126777732629014,
  calibration: [
    { raw: 0, reach: 0 },
    { raw: 0.0274, reach: 0.0384 },
    { raw: 0.0684, reach: 0.0902 },
    { raw: 0.0961, reach: 0.1323 },
    { raw: 0.12, reach: 0.1475 },
    { raw: 0.1465, reach: 0.1652 },
    { raw: 0.1781, reach: 0.2129 },
    { raw: 0.21, reach: 0.2509 },
    { raw: 0.2461, reach: 0.2982 },
    { raw: 0.296, reach: 0.3573 },
    { raw: 0.3508, reach: 0.4257 },
    { raw: 0.4219, reach: 0.4988 },
    { raw: 0.5869, reach: 0.6689 },
    { raw: 1, reach: 1 },
  ],
};
