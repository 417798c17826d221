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
    gap: 0.008,
    tenths: [
      { predicted: 0.0594, won: 0.055 },
      { predicted: 0.0877, won: 0.087 },
      { predicted: 0.1181, won: 0.114 },
      { predicted: 0.1435, won: 0.141 },
      { predicted: 0.1598, won: 0.178 },
      { predicted: 0.1842, won: 0.2 },
      { predicted: 0.2278, won: 0.234 },
      { predicted: 0.2751, won: 0.279 },
      { predicted: 0.3588, won: 0.38 },
      { predicted: 0.5354, won: 0.5385 },
    ],
  },
  {
    title: 'Wide meadow',
    racks: 20000,
    gap: 0.0171,
    tenths: [
      { predicted: 0.0683, won: 0.0505 },
      { predicted: 0.0982, won: 0.068 },
      { predicted: 0.1339, won: 0.106 },
      { predicted: 0.1553, won: 0.135 },
      { predicted: 0.1735, won: 0.159 },
      { predicted: 0.1992, won: 0.1915 },
      { predicted: 0.2393, won: 0.229 },
      { predicted: 0.2877, won: 0.264 },
      { predicted: 0.3684, won: 0.367 },
      { predicted: 0.5377, won: 0.5205 },
    ],
  },
  {
    title: 'Narrow stair',
    racks: 20000,
    gap: 0.0056,
    tenths: [
      { predicted: 0.02, won: 0.021 },
      { predicted: 0.0338, won: 0.033 },
      { predicted: 0.0452, won: 0.0475 },
      { predicted: 0.0587, won: 0.052 },
      { predicted: 0.0719, won: 0.0745 },
      { predicted: 0.0865, won: 0.079 },
      { predicted: 0.1062, won: 0.111 },
      { predicted: 0.1334, won: 0.1425 },
      { predicted: 0.18, won: 0.19 },
      { predicted: 0.3159, won: 0.3275 },
    ],
  },
];
