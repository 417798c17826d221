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
    gap: 0.0183,
    tenths: [
      { predicted: 0.052, won: 0.0545 },
      { predicted: 0.0785, won: 0.091 },
      { predicted: 0.1072, won: 0.1145 },
      { predicted: 0.1346, won: 0.1465 },
      { predicted: 0.1472, won: 0.158 },
      { predicted: 0.1691, won: 0.2135 },
      { predicted: 0.2156, won: 0.234 },
      { predicted: 0.2611, won: 0.284 },
      { predicted: 0.3488, won: 0.3825 },
      { predicted: 0.5209, won: 0.539 },
    ],
  },
  {
    title: 'Wide meadow',
    racks: 20000,
    gap: 0.0155,
    tenths: [
      { predicted: 0.0617, won: 0.05 },
      { predicted: 0.0924, won: 0.0735 },
      { predicted: 0.1249, won: 0.102 },
      { predicted: 0.1432, won: 0.131 },
      { predicted: 0.157, won: 0.152 },
      { predicted: 0.1876, won: 0.1995 },
      { predicted: 0.2362, won: 0.2475 },
      { predicted: 0.283, won: 0.2515 },
      { predicted: 0.3702, won: 0.361 },
      { predicted: 0.5414, won: 0.5215 },
    ],
  },
  {
    title: 'Narrow stair',
    racks: 20000,
    gap: 0.0089,
    tenths: [
      { predicted: 0.0234, won: 0.0205 },
      { predicted: 0.0382, won: 0.037 },
      { predicted: 0.0496, won: 0.0455 },
      { predicted: 0.0617, won: 0.0595 },
      { predicted: 0.0741, won: 0.069 },
      { predicted: 0.0877, won: 0.0795 },
      { predicted: 0.1108, won: 0.108 },
      { predicted: 0.1368, won: 0.1475 },
      { predicted: 0.163, won: 0.19 },
      { predicted: 0.3047, won: 0.3295 },
    ],
  },
];
