// The handbook's own address, whatever folder of whatever server it lies in.
// This script is <root>/assets/bendbook/bendbook.js.
export const root = new URL("../../", import.meta.url).href;
