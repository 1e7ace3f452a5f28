/** Degrees Fahrenheit [degF] to degrees Celsius [degC]. Source: definition, exact. */
export const celsiusFromFahrenheit = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
/** Degrees Celsius [degC] to degrees Fahrenheit [degF]. Source: definition, exact. */
export const fahrenheitFromCelsius = (celsius: number): number => (celsius * 9) / 5 + 32;
