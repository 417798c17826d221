/** One card's racks after the exchange: reach and what came of it at the simulated table. */
export interface CardCalibration {
  readonly title: string;
  readonly racks: number;
  /** The mean absolute gap over the tenths, 0 to 1. */
  readonly gap: number;
  /** By tenths of the racks: the mean reach, and the share that won. */
  readonly tenths: readonly { readonly predicted: number; readonly won: number }[];
}

/** Written by `npm run calibrate`; the whole report is CALIBRATION.md. */
export const CALIBRATION: readonly CardCalibration[] = [
  {
    title: 'Lakeside demo card',
    racks: 20000,
    gap: 0.0082,
    tenths: [
      { predicted: 0.0586, won: 0.0545 },
      { predicted: 0.0872, won: 0.088 },
      { predicted: 0.1184, won: 0.1115 },
      { predicted: 0.1442, won: 0.1425 },
      { predicted: 0.1603, won: 0.17 },
      { predicted: 0.1841, won: 0.2055 },
      { predicted: 0.2294, won: 0.235 },
      { predicted: 0.2753, won: 0.276 },
      { predicted: 0.361, won: 0.3845 },
      { predicted: 0.5299, won: 0.538 },
    ],
  },
  {
    title: 'Wide meadow',
    racks: 20000,
    gap: 0.0153,
    tenths: [
      { predicted: 0.0678, won: 0.0505 },
      { predicted: 0.098, won: 0.0685 },
      { predicted: 0.1342, won: 0.1065 },
      { predicted: 0.1557, won: 0.1375 },
      { predicted: 0.1729, won: 0.154 },
      { predicted: 0.1981, won: 0.1885 },
      { predicted: 0.2399, won: 0.2385 },
      { predicted: 0.286, won: 0.2635 },
      { predicted: 0.3679, won: 0.3675 },
      { predicted: 0.531, won: 0.524 },
    ],
  },
  {
    title: 'Narrow stair',
    racks: 20000,
    gap: 0.0043,
    tenths: [
      { predicted: 0.0192, won: 0.021 },
      { predicted: 0.0328, won: 0.033 },
      { predicted: 0.0443, won: 0.0475 },
      { predicted: 0.0579, won: 0.052 },
      { predicted: 0.0714, won: 0.0745 },
      { predicted: 0.0864, won: 0.079 },
      { predicted: 0.1068, won: 0.111 },
      { predicted: 0.1349, won: 0.142 },
      { predicted: 0.1833, won: 0.19 },
      { predicted: 0.324, won: 0.3275 },
    ],
  },
];
