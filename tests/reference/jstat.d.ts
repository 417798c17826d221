/** The few functions of jstat 1.9.6 (no types of its own) that serve as referees. */
declare module 'jstat' {
  interface Distribution<Parameters extends readonly number[]> {
    cdf(x: number, ...parameters: Parameters): number;
    pdf(x: number, ...parameters: Parameters): number;
    inv(p: number, ...parameters: Parameters): number;
  }
  const jstat: {
    readonly chisquare: Distribution<[degrees: number]>;
    readonly normal: Distribution<[mean: number, deviation: number]>;
    readonly studentt: Distribution<[freedom: number]>;
    readonly binomial: Distribution<[trials: number, chance: number]>;
    /** Parameters: all tiles, tiles of the kind, tiles drawn. */
    readonly hypgeom: Distribution<[population: number, successes: number, draws: number]>;
  };
  export default jstat;
}
