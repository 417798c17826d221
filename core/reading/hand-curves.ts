/** Written by `npm run calibrate`; what it means is said in MODEL.md, MD-C12. */
export const HAND_CURVES = {
  plain: { intercept: -0.2887, slope: 0.9357 },
  wild: { intercept: -0.0399, slope: 0.9588 },
};
