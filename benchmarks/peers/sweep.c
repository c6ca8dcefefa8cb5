/*
 * Sweep of polynomials over one shared denominator, as a C programmer writes it, with the arithmetic of the TypeScript:
 * two Horner schemes in -w^2 of eight terms, one inversion a frequency, one complex product a column.
 *
 *   sweep <file> check <set>            columns as doubles on stdout
 *   sweep <file> time <set> <seconds>   JSON: seconds a call by the clock and by the processor, round by round
 *
 * set: A  loops of the TypeScript, one pass a column | F  the same arithmetic in one pass | B  all real columns
 * The file holds doubles: rows, width, scale, count, density, drive, then rows x width coefficients, then frequencies.
 * Rows of B: denominator, radiated flow, cone velocity, current, terminal voltage, air speed.
 */
#define _POSIX_C_SOURCE 199309L
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define MOST 8
static const double PI = 3.14159265358979323846;
static int rows, width, count;
static double scale, density, drive, *coefficients, *frequencies;
static double c[MOST][8];
static double *re[MOST], *im[MOST];
static double *real[7];

static void polynomial(const double *restrict k, double *restrict a, double *restrict b, const double *restrict f) {
  const double unit = 2 * PI / scale;
  const double k0 = k[0], k1 = k[1], k2 = k[2], k3 = k[3], k4 = k[4], k5 = k[5], k6 = k[6], k7 = k[7];
  for (int i = 0; i < count; i++) {
    const double w = f[i] * unit, square = -w * w;
    a[i] = ((k6 * square + k4) * square + k2) * square + k0;
    b[i] = (((k7 * square + k5) * square + k3) * square + k1) * w;
  }
}

static void invert(double *restrict a, double *restrict b) {
  for (int i = 0; i < count; i++) {
    const double x = a[i], y = b[i], unit = 1 / (x * x + y * y);
    a[i] = x * unit;
    b[i] = -y * unit;
  }
}

static void product(const double *restrict k, const double *restrict u, const double *restrict v, double *restrict a,
                    double *restrict b, const double *restrict f) {
  const double unit = 2 * PI / scale;
  const double k0 = k[0], k1 = k[1], k2 = k[2], k3 = k[3], k4 = k[4], k5 = k[5], k6 = k[6], k7 = k[7];
  for (int i = 0; i < count; i++) {
    const double w = f[i] * unit, square = -w * w;
    const double x = ((k6 * square + k4) * square + k2) * square + k0;
    const double y = (((k7 * square + k5) * square + k3) * square + k1) * w;
    a[i] = x * u[i] - y * v[i];
    b[i] = x * v[i] + y * u[i];
  }
}

static void passes(void) {
  polynomial(c[0], re[0], im[0], frequencies);
  invert(re[0], im[0]);
  for (int r = 1; r < rows; r++) product(c[r], re[0], im[0], re[r], im[r], frequencies);
}

/* Four columns: what set A has. */
static void fused(void) {
  const double unit = 2 * PI / scale;
  for (int i = 0; i < count; i++) {
    const double w = frequencies[i] * unit, square = -w * w;
    double u = 0, v = 0;
    for (int r = 0; r < 5; r++) {
      const double *k = c[r];
      const double x = ((k[6] * square + k[4]) * square + k[2]) * square + k[0];
      const double y = (((k[7] * square + k[5]) * square + k[3]) * square + k[1]) * w;
      if (r == 0) {
        const double size = 1 / (x * x + y * y);
        u = x * size;
        v = -y * size;
      } else {
        re[r][i] = x * u - y * v;
        im[r][i] = x * v + y * u;
      }
    }
  }
}

/* Re(P'/P) on the imaginary axis. */
static double slope(const double *k, double w) {
  const double s = -w * w;
  const double x = ((k[6] * s + k[4]) * s + k[2]) * s + k[0];
  const double y = (((k[7] * s + k[5]) * s + k[3]) * s + k[1]) * w;
  const double p = ((7 * k[7] * s + 5 * k[5]) * s + 3 * k[3]) * s + k[1];
  const double q = ((6 * k[6] * s + 4 * k[4]) * s + 2 * k[2]) * w;
  return (p * x + q * y) / (x * x + y * y);
}

static void everything(void) {
  passes();
  const double level = density * drive / 20e-6, peak = sqrt(2) * drive;
  for (int i = 0; i < count; i++) {
    const double f = frequencies[i], w = 2 * PI * f / scale;
    const double a = re[4][i], b = im[4][i], x = re[3][i], y = im[3][i];
    real[0][i] = 20 * log10(hypot(re[1][i], im[1][i]) * f * level);
    real[1][i] = atan2(re[1][i], -im[1][i]);
    real[2][i] = hypot(re[2][i], im[2][i]) * peak / (2 * PI * f);
    real[3][i] = hypot(re[5][i], im[5][i]) * peak;
    real[4][i] = hypot(a, b) / hypot(x, y);
    real[5][i] = atan2(b * x - a * y, a * x + b * y);
    real[6][i] = (slope(c[0], w) - slope(c[1], w)) / scale;
  }
}

static double clock_of(clockid_t id) {
  struct timespec t;
  clock_gettime(id, &t);
  return t.tv_sec + t.tv_nsec * 1e-9;
}

static void list(const char *name, const double *values, int length, const char *end) {
  printf("\"%s\":[", name);
  for (int i = 0; i < length; i++) printf("%s%.6e", i ? "," : "", values[i]);
  printf("]%s", end);
}

static void time_it(void (*call)(void), double seconds) {
  enum { MOST_ROUNDS = 4096 };
  static double wall[MOST_ROUNDS], cpu[MOST_ROUNDS];
  long calls = 1;
  double took, warm = clock_of(CLOCK_MONOTONIC) + seconds / 4;
  do {
    const double start = clock_of(CLOCK_MONOTONIC);
    for (long i = 0; i < calls; i++) call();
    took = clock_of(CLOCK_MONOTONIC) - start;
    if (took < 0.01) calls *= 2;
  } while (clock_of(CLOCK_MONOTONIC) < warm || took < 0.01);
  const double end = clock_of(CLOCK_MONOTONIC) + seconds;
  int n = 0;
  while ((clock_of(CLOCK_MONOTONIC) < end || n < 5) && n < MOST_ROUNDS) {
    const double used = clock_of(CLOCK_PROCESS_CPUTIME_ID), start = clock_of(CLOCK_MONOTONIC);
    for (long i = 0; i < calls; i++) call();
    wall[n] = (clock_of(CLOCK_MONOTONIC) - start) / calls;
    cpu[n++] = (clock_of(CLOCK_PROCESS_CPUTIME_ID) - used) / calls;
  }
  printf("{");
  list("wall", wall, n, ",");
  list("cpu", cpu, n, "}\n");
}

static double *doubles(size_t length) {
  double *made = calloc(length, sizeof(double));
  if (!made) exit(3);
  return made;
}

int main(int argc, char **argv) {
  FILE *file = argc >= 4 ? fopen(argv[1], "rb") : NULL;
  double head[6];
  if (!file || fread(head, sizeof(double), 6, file) != 6) return 2;
  rows = (int)head[0];
  width = (int)head[1];
  scale = head[2];
  count = (int)head[3];
  density = head[4];
  drive = head[5];
  if (rows > MOST || width > 8) return 2;
  coefficients = doubles(rows * width);
  frequencies = doubles(count);
  if (fread(coefficients, sizeof(double), rows * width, file) != (size_t)(rows * width)) return 2;
  if (fread(frequencies, sizeof(double), count, file) != (size_t)count) return 2;
  for (int r = 0; r < rows; r++) {
    memcpy(c[r], coefficients + r * width, width * sizeof(double));
    re[r] = doubles(count);
    im[r] = doubles(count);
  }
  for (int k = 0; k < 7; k++) real[k] = doubles(count);
  const char set = argv[3][0];
  if (set == 'B' ? rows != 6 : rows != 5) return 2;
  void (*call)(void) = set == 'A' ? passes : set == 'F' ? fused : everything;
  if (strcmp(argv[2], "time") == 0) {
    time_it(call, argc > 4 ? atof(argv[4]) : 1);
    return 0;
  }
  call();
  if (set == 'B') {
    for (int k = 0; k < 7; k++) fwrite(real[k], sizeof(double), count, stdout);
  } else {
    for (int r = 1; r < rows; r++) {
      fwrite(re[r], sizeof(double), count, stdout);
      fwrite(im[r], sizeof(double), count, stdout);
    }
  }
  return 0;
}
