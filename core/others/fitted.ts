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
      aim: { slope: 0.714, thrown: -1.105, passed: -0.938 },
      win: { level: -4.76, slope: 0.468, drawn: 2.793 },
      group: { level: -1.039, slope: 0.973, drawn: 0.022 },
    },
    {
      aim: { slope: 1.04, thrown: -0.723, passed: -0.762 },
      win: { level: -3.261, slope: 0.713, drawn: 2.882 },
      group: { level: -0.791, slope: 1.002, drawn: -0.566 },
    },
    {
      aim: { slope: 1.225, thrown: -0.296, passed: -0.129 },
      win: { level: -2.325, slope: 0.804, drawn: 2.435 },
      group: { level: -0.949, slope: 0.743, drawn: -0.724 },
    },
  ],
  relaxed: [
    {
      aim: { slope: 0.735, thrown: -0.982, passed: -0.918 },
      win: { level: -3.111, slope: 0.604, drawn: 1.293 },
      group: { level: -1.351, slope: 0.96, drawn: 0.301 },
    },
    {
      aim: { slope: 1.003, thrown: -0.737, passed: -0.64 },
      win: { level: -2.498, slope: 0.725, drawn: 1.966 },
      group: { level: -1.432, slope: 0.83, drawn: -0.241 },
    },
    {
      aim: { slope: 1.006, thrown: -0.166, passed: -0.524 },
      win: { level: -1.465, slope: 0.763, drawn: 0.964 },
      group: { level: -1.124, slope: 0.767, drawn: -0.541 },
    },
  ],
};
