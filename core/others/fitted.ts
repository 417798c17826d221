import type { FittedSeats } from './fit-shape.ts';

/** Made by `npm run calibrate:others`; how well they hold stands in core/others/CALIBRATION.md. */
export const FITTED: FittedSeats = {
  quick: [
    {
      aim: { slope: 0.71, thrown: -1.22, passed: -0.83 },
      win: { level: -3.59, slope: 0.63, flower: -0.15, drawn: 2.58 },
      group: { level: -0.79, slope: 1.16, flower: -0.43, drawn: 0.62 },
    },
    {
      aim: { slope: 1.04, thrown: -0.69, passed: -0.36 },
      win: { level: -2.78, slope: 0.66, flower: -0.94, drawn: 2.73 },
      group: { level: -0.4, slope: 1.05, flower: -0.27, drawn: -0.12 },
    },
    {
      aim: { slope: 0.95, thrown: -0.93, passed: -0.25 },
      win: { level: -1.19, slope: 0.66, flower: 0.4, drawn: 0.91 },
      group: { level: -0.76, slope: 0.82, flower: -0.2, drawn: -0.42 },
    },
  ],
  club: [
    {
      aim: { slope: 0.73, thrown: -1.04, passed: -0.96 },
      win: { level: -0.84, slope: 0.93, flower: -0.24, drawn: 0.97 },
      group: { level: -0.78, slope: 1.07, flower: -0.31, drawn: 0.28 },
    },
    {
      aim: { slope: 1.03, thrown: -0.68, passed: -0.6 },
      win: { level: -2.0, slope: 0.77, flower: 0.01, drawn: 1.69 },
      group: { level: -1.12, slope: 0.95, flower: -0.3, drawn: -0.01 },
    },
    {
      aim: { slope: 0.9, thrown: -0.34, passed: -0.17 },
      win: { level: -1.94, slope: 0.73, flower: -0.77, drawn: 1.86 },
      group: { level: -1.16, slope: 0.9, flower: -0.14, drawn: 0.12 },
    },
  ],
  relaxed: [
    {
      aim: { slope: 0.72, thrown: -0.92, passed: -1.01 },
      win: { level: -3.23, slope: 0.74, flower: -0.02, drawn: 2.37 },
      group: { level: -0.96, slope: 1.07, flower: -0.43, drawn: 0.09 },
    },
    {
      aim: { slope: 1.04, thrown: -0.68, passed: -0.69 },
      win: { level: -0.33, slope: 0.96, flower: -0.29, drawn: 0.62 },
      group: { level: -1.49, slope: 0.86, flower: -0.38, drawn: 0.1 },
    },
    {
      aim: { slope: 0.99, thrown: -0.23, passed: -0.63 },
      win: { level: -1.48, slope: 0.75, flower: -0.24, drawn: 1.24 },
      group: { level: -1.27, slope: 0.72, flower: -0.49, drawn: -0.52 },
    },
  ],
};
