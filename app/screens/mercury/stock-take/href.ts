/** Where the guided stock-take is. */
export const stockTakeHref = '#/mercury/stock-take';
