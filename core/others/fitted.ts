import type { FittedSeats } from './fit-shape.ts';

/** Made by `npm run calibrate:others`; how well they hold stands in core/others/CALIBRATION.md. */
export const FITTED: FittedSeats = {
  quick: [
    {
      aim: { slope: 0.71, thrown: -1.18, passed: -0.87 },
      win: { level: -3.1, slope: 0.67, flower: -0.3, drawn: 2.21 },
      group: { level: -0.84, slope: 1.15, flower: -0.38, drawn: 0.79 },
    },
    {
      aim: { slope: 1.03, thrown: -0.74, passed: -0.33 },
      win: { level: -2.33, slope: 0.74, flower: -0.75, drawn: 2.52 },
      group: { level: -0.44, slope: 1.05, flower: -0.3, drawn: -0.16 },
    },
    {
      aim: { slope: 0.87, thrown: -0.75, passed: -0.27 },
      win: { level: -1.28, slope: 0.7, flower: 0.21, drawn: 1.2 },
      group: { level: -0.4, slope: 0.87, flower: -0.49, drawn: -0.85 },
    },
  ],
  club: [
    {
      aim: { slope: 0.74, thrown: -1.03, passed: -0.97 },
      win: { level: -2.64, slope: 0.76, flower: -0.31, drawn: 2.22 },
      group: { level: -0.81, slope: 1.06, flower: -0.28, drawn: 0.12 },
    },
    {
      aim: { slope: 0.99, thrown: -0.65, passed: -0.71 },
      win: { level: -2.29, slope: 0.76, flower: -0.24, drawn: 2.11 },
      group: { level: -0.96, slope: 0.95, flower: -0.28, drawn: -0.29 },
    },
    {
      aim: { slope: 0.93, thrown: -0.42, passed: -0.34 },
      win: { level: -2.19, slope: 0.69, flower: -0.25, drawn: 1.89 },
      group: { level: -1.27, slope: 0.89, flower: 0.1, drawn: 0.09 },
    },
  ],
  relaxed: [
    {
      aim: { slope: 0.73, thrown: -0.93, passed: -1 },
      win: { level: -3.8, slope: 0.65, flower: -0.4, drawn: 2.67 },
      group: { level: -1.02, slope: 1.05, flower: -0.41, drawn: 0.09 },
    },
    {
      aim: { slope: 1.01, thrown: -0.7, passed: -0.73 },
      win: { level: -1.23, slope: 0.82, flower: -0.3, drawn: 1.01 },
      group: { level: -1.45, slope: 0.89, flower: -0.22, drawn: -0.02 },
    },
    {
      aim: { slope: 0.95, thrown: -0.27, passed: -0.77 },
      win: { level: -1.27, slope: 0.76, flower: -0.3, drawn: 0.93 },
      group: { level: -1.46, slope: 0.75, flower: -0.1, drawn: -0.36 },
    },
  ],
};
