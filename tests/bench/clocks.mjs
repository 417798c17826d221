/** The two clocks of the benchmarks, in milliseconds. @type {import('./judge.ts').Clocks} */
export const CLOCKS = {
  cpu: () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  },
  wall: () => performance.now(),
};
