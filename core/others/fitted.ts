import type { FittedSeats } from './fit-shape.ts';

/** Made by `npm run calibrate:others`; how well they hold stands in core/others/CALIBRATION.md. */
export const FITTED: FittedSeats = {
  quick: [
    {
      aim: { slope: 0.71, thrown: -1.208, passed: -0.786 },
      win: { level: -4.519, slope: 0.538, drawn: 3.063 },
      group: { level: -1.149, slope: 1.055, drawn: 0.726 },
    },
    {
      aim: { slope: 1.043, thrown: -0.715, passed: -0.352 },
      win: { level: -3.264, slope: 0.648, drawn: 3.209 },
      group: { level: -0.529, slope: 1.038, drawn: -0.077 },
    },
    {
      aim: { slope: 0.91, thrown: -0.976, passed: -0.177 },
      win: { level: -0.836, slope: 0.713, drawn: 0.534 },
      group: { level: -0.937, slope: 0.774, drawn: -0.233 },
    },
  ],
  club: [
    {
      aim: { slope: 0.727, thrown: -1.057, passed: -0.967 },
      win: { level: -1.358, slope: 0.886, drawn: 1.27 },
      group: { level: -0.993, slope: 1.018, drawn: 0.441 },
    },
    {
      aim: { slope: 1.029, thrown: -0.728, passed: -0.622 },
      win: { level: -2.49, slope: 0.72, drawn: 2.169 },
      group: { level: -1.331, slope: 0.901, drawn: 0.195 },
    },
    {
      aim: { slope: 0.904, thrown: -0.432, passed: 0.018 },
      win: { level: -2.637, slope: 0.727, drawn: 2.71 },
      group: { level: -1.067, slope: 0.839, drawn: -0.005 },
    },
  ],
  relaxed: [
    {
      aim: { slope: 0.722, thrown: -0.911, passed: -1.047 },
      win: { level: -3.121, slope: 0.752, drawn: 2.108 },
      group: { level: -1.245, slope: 0.978, drawn: 0.101 },
    },
    {
      aim: { slope: 1.053, thrown: -0.69, passed: -0.755 },
      win: { level: -0.396, slope: 0.941, drawn: 0.629 },
      group: { level: -1.572, slope: 0.826, drawn: 0.083 },
    },
    {
      aim: { slope: 1.014, thrown: -0.166, passed: -0.41 },
      win: { level: -0.923, slope: 0.801, drawn: 0.759 },
      group: { level: -1.43, slope: 0.7, drawn: -0.51 },
    },
  ],
};
