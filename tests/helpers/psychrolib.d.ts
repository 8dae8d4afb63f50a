// psychrolib 1.1.1 comes without types: what the tests use of it.
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    readonly IP: number;
    SetUnitSystem(system: number): void;
    /** Air in degrees C (SI) or F (IP) and relative humidity from 0 to 1 → dew point in the same degrees. */
    GetTDewPointFromRelHum(air: number, humidity: number): number;
  };
  export = psychrolib;
}
