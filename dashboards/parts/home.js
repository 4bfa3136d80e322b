// Where this service is: at the top of its host, or below a path of a proxy or of a plant.

const HERE = new URL("..", import.meta.url).pathname;

/** The path of a page, file or answer of this service, from any of its pages. */
export const home = (path = "") => HERE + path;
