import type { FittedSeats } from './fit-shape.ts';

/** Made by `npm run calibrate:others`; how well they hold stands in core/others/CALIBRATION.md. */
export const FITTED: FittedSeats = {
  quick: [
    {
      aim: { slope: 0.707, thrown: -1.218, passed: -0.828 },
      win: { level: -3.59, slope: 0.629, flower: -0.146, drawn: 2.581 },
      group: { level: -0.789, slope: 1.158, flower: -0.429, drawn: 0.62 },
    },
    {
      aim: { slope: 1.043, thrown: -0.693, passed: -0.365 },
      win: { level: -2.783, slope: 0.662, flower: -0.939, drawn: 2.726 },
      group: { level: -0.4, slope: 1.055, flower: -0.274, drawn: -0.125 },
    },
    {
      aim: { slope: 0.949, thrown: -0.932, passed: -0.251 },
      win: { level: -1.192, slope: 0.663, flower: 0.398, drawn: 0.913 },
      group: { level: -0.76, slope: 0.82, flower: -0.199, drawn: -0.417 },
    },
  ],
  club: [
    {
      aim: { slope: 0.734, thrown: -1.036, passed: -0.964 },
      win: { level: -0.843, slope: 0.927, flower: -0.24, drawn: 0.972 },
      group: { level: -0.776, slope: 1.074, flower: -0.309, drawn: 0.282 },
    },
    {
      aim: { slope: 1.031, thrown: -0.678, passed: -0.597 },
      win: { level: -2.004, slope: 0.773, flower: 0.009, drawn: 1.688 },
      group: { level: -1.123, slope: 0.949, flower: -0.298, drawn: -0.008 },
    },
    {
      aim: { slope: 0.903, thrown: -0.34, passed: -0.166 },
      win: { level: -1.941, slope: 0.735, flower: -0.77, drawn: 1.859 },
      group: { level: -1.163, slope: 0.9, flower: -0.137, drawn: 0.124 },
    },
  ],
  relaxed: [
    {
      aim: { slope: 0.725, thrown: -0.921, passed: -1.015 },
      win: { level: -3.23, slope: 0.74, flower: -0.021, drawn: 2.365 },
      group: { level: -0.958, slope: 1.066, flower: -0.43, drawn: 0.093 },
    },
    {
      aim: { slope: 1.045, thrown: -0.678, passed: -0.686 },
      win: { level: -0.327, slope: 0.959, flower: -0.295, drawn: 0.624 },
      group: { level: -1.486, slope: 0.86, flower: -0.376, drawn: 0.1 },
    },
    {
      aim: { slope: 0.986, thrown: -0.235, passed: -0.633 },
      win: { level: -1.483, slope: 0.751, flower: -0.239, drawn: 1.24 },
      group: { level: -1.268, slope: 0.718, flower: -0.491, drawn: -0.524 },
    },
  ],
};
