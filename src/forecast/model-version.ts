/** Version of the forecasting model, stored with every forecast. Raise it whenever a forecast's numbers can change. */
export const MODEL_VERSION = '2026.11.4';
