/** Written by `npm run calibrate`; what it means is said in MODEL.md, MD-C12. */
export const HAND_CURVES = {
  plain: { intercept: -0.2339, slope: 0.9628 },
  wild: { intercept: -0.1105, slope: 0.9227 },
};
