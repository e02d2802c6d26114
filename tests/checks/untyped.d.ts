// What the checks use of statistics libraries that come without types.

declare module 'jstat' {
  interface Distribution {
    cdf(x: number, a: number, b: number): number;
    inv(p: number, a: number, b: number): number;
    mean(a: number, b: number): number;
    variance(a: number, b: number): number;
  }
  const jStat: {
    readonly normal: Distribution;
    /** Shape, then scale. */
    readonly gamma: Distribution;
    /** Scale, then shape. */
    readonly weibull: Distribution;
    readonly studentt: {
      cdf(x: number, df: number): number;
      inv(p: number, df: number): number;
    };
    readonly gammaln: (x: number) => number;
  };
  export default jStat;
}

declare module 'ranjs' {
  interface Distribution {
    cdf(x: number): number;
    pdf(x: number): number;
  }
  const ran: {
    readonly dist: {
      /** Mean, then shape. */
      readonly InverseGaussian: new (mean: number, shape: number) => Distribution;
      /** Scale, then shape. */
      readonly Weibull: new (scale: number, shape: number) => Distribution;
    };
  };
  export default ran;
}
