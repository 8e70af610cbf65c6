// Gives up waiting after a time; `failure()` makes the error.
export function within(milliseconds, promise, failure) {
  let timer;
  const late = new Promise((_, reject) => {
    timer = setTimeout(() => reject(failure()), milliseconds);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}
