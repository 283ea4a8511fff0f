// The arithmetic of src/suspension/poseRow.ts in C++, for nativePose.ts to time against it. Names are the same.
//
// Usage: pose FILE ROUNDS. FILE holds 64-bit numbers: how many sides, how many poses a side, then for each side
// its 32 constants and 5 inputs a pose. Runs all poses once, then ROUNDS times on the clock, and prints the
// nanoseconds of processor time of the latter and the sum of all numbers of all pose rows.

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

namespace SIDE {
enum {
  lowerFoot = 0,
  lowerRadial = 3,
  lowerQuarter = 6,
  upperFoot = 9,
  upperRadial = 12,
  upperQuarter = 15,
  span = 18,
  upperRoot = 19,
  steeringArm = 20,
  pinCos = 23,
  pinSin = 24,
  wheelCenter = 25,
  offset = 28,
  tieRodLength = 29,
  tieRodRoot = 30,
  loadedRadius = 31,
};
}
constexpr int SIDE_ROW = 32;
constexpr int INPUT_ROW = 5;
constexpr int POSE_ROW = 33;

enum PoseStatus { Ok = 0, UpperArmOutOfReach = 1, TieRodOutOfReach = 2 };

static PoseStatus poseRowTo(double *__restrict out, const double *__restrict side, double cosArm, double sinArm,
                            double innerX, double innerY, double innerZ) {
  const double lx = side[SIDE::lowerFoot] + cosArm * side[SIDE::lowerRadial] + sinArm * side[SIDE::lowerQuarter];
  const double ly =
      side[SIDE::lowerFoot + 1] + cosArm * side[SIDE::lowerRadial + 1] + sinArm * side[SIDE::lowerQuarter + 1];
  const double lz =
      side[SIDE::lowerFoot + 2] + cosArm * side[SIDE::lowerRadial + 2] + sinArm * side[SIDE::lowerQuarter + 2];

  const double span = side[SIDE::span];
  const double fx = side[SIDE::upperFoot];
  const double fy = side[SIDE::upperFoot + 1];
  const double fz = side[SIDE::upperFoot + 2];
  const double px = side[SIDE::upperRadial];
  const double py = side[SIDE::upperRadial + 1];
  const double pz = side[SIDE::upperRadial + 2];
  const double qx = side[SIDE::upperQuarter];
  const double qy = side[SIDE::upperQuarter + 1];
  const double qz = side[SIDE::upperQuarter + 2];
  const double dx = lx - fx;
  const double dy = ly - fy;
  const double dz = lz - fz;
  const double upperA = px * dx + py * dy + pz * dz;
  const double upperB = qx * dx + qy * dy + qz * dz;
  const double upperC = 0.5 * (dx * dx + dy * dy + dz * dz + (px * px + py * py + pz * pz) - span * span);
  const double upperNormSq = upperA * upperA + upperB * upperB;
  const double upperHSq = upperNormSq - upperC * upperC;
  if (!(upperHSq >= 0)) return UpperArmOutOfReach;
  const double upperH = side[SIDE::upperRoot] * std::sqrt(upperHSq);
  const double perUpperNormSq = 1 / upperNormSq;
  const double cosUpper = (upperA * upperC - upperB * upperH) * perUpperNormSq;
  const double sinUpper = (upperB * upperC + upperA * upperH) * perUpperNormSq;
  const double ux = fx + cosUpper * px + sinUpper * qx;
  const double uy = fy + cosUpper * py + sinUpper * qy;
  const double uz = fz + cosUpper * pz + sinUpper * qz;

  const double perSpan = 1 / span;
  const double kx = (ux - lx) * perSpan;
  const double ky = (uy - ly) * perSpan;
  const double kz = (uz - lz) * perSpan;
  const double m = std::sqrt(1 - ky * ky);
  const double perM = 1 / m;
  const double rx = kz * perM;
  const double rz = -kx * perM;
  const double sx = ky * rz;
  const double sy = m;
  const double sz = -ky * rx;

  const double armX = side[SIDE::steeringArm];
  const double armY = side[SIDE::steeringArm + 1];
  const double armZ = side[SIDE::steeringArm + 2];
  const double tie = side[SIDE::tieRodLength];
  const double ex = innerX - lx - armZ * kx;
  const double ey = innerY - ly - armZ * ky;
  const double ez = innerZ - lz - armZ * kz;
  const double er = ex * rx + ez * rz;
  const double es = ex * sx + ey * sy + ez * sz;
  const double tieA = armX * er + armY * es;
  const double tieB = armX * es - armY * er;
  const double tieC = 0.5 * (armX * armX + armY * armY + (ex * ex + ey * ey + ez * ez) - tie * tie);
  const double tieNormSq = tieA * tieA + tieB * tieB;
  const double tieHSq = tieNormSq - tieC * tieC;
  if (!(tieHSq >= 0)) return TieRodOutOfReach;
  out[0] = lx;
  out[1] = ly;
  out[2] = lz;
  out[3] = ux;
  out[4] = uy;
  out[5] = uz;
  out[9] = innerX;
  out[10] = innerY;
  out[11] = innerZ;
  out[18] = kx;
  out[19] = ky;
  out[20] = kz;
  const double tieH = side[SIDE::tieRodRoot] * std::sqrt(tieHSq);
  const double perTieNormSq = 1 / tieNormSq;
  const double cosTurn = (tieA * tieC - tieB * tieH) * perTieNormSq;
  const double sinTurn = (tieB * tieC + tieA * tieH) * perTieNormSq;
  const double xx = cosTurn * rx + sinTurn * sx;
  const double xy = sinTurn * sy;
  const double xz = cosTurn * rz + sinTurn * sz;
  const double yx = cosTurn * sx - sinTurn * rx;
  const double yy = cosTurn * sy;
  const double yz = cosTurn * sz - sinTurn * rz;
  out[6] = lx + armX * xx + armY * yx + armZ * kx;
  out[7] = ly + armX * xy + armY * yy + armZ * ky;
  out[8] = lz + armX * xz + armY * yz + armZ * kz;
  out[12] = xx;
  out[13] = xy;
  out[14] = xz;
  out[15] = yx;
  out[16] = yy;
  out[17] = yz;

  const double wx = side[SIDE::wheelCenter];
  const double wy = side[SIDE::wheelCenter + 1];
  const double wz = side[SIDE::wheelCenter + 2];
  const double pinCos = side[SIDE::pinCos];
  const double pinSin = side[SIDE::pinSin];
  const double nx = pinCos * yx - pinSin * kx;
  const double ny = pinCos * yy - pinSin * ky;
  const double nz = pinCos * yz - pinSin * kz;
  const double cx = lx + wx * xx + wy * yx + wz * kx;
  const double cy = ly + wx * xy + wy * yy + wz * ky;
  const double cz = lz + wx * xz + wy * yz + wz * kz;
  const double offset = side[SIDE::offset];
  const double level = std::sqrt(nx * nx + ny * ny);
  const double loadedRadius = side[SIDE::loadedRadius];
  const double sideways = (loadedRadius / level) * nz;

  out[21] = cx;
  out[22] = cy;
  out[23] = cz;
  out[24] = nx;
  out[25] = ny;
  out[26] = nz;
  out[27] = cx + offset * nx;
  out[28] = cy + offset * ny;
  out[29] = cz + offset * nz;
  out[30] = cx + sideways * nx;
  out[31] = cy + sideways * ny;
  out[32] = cz - loadedRadius * level;
  return Ok;
}

static std::vector<double> numbersIn(const char *path) {
  std::vector<double> numbers;
  std::FILE *file = std::fopen(path, "rb");
  if (file == nullptr) return numbers;
  double number;
  while (std::fread(&number, sizeof number, 1, file) == 1) numbers.push_back(number);
  std::fclose(file);
  return numbers;
}

/** Every pose of every side once, each to its own row. */
static bool solveAll(std::vector<double> &rows, const std::vector<double> &given, int sides, int poses) {
  double *out = rows.data();
  const double *side = given.data() + 2;
  for (int s = 0; s < sides; s++) {
    const double *input = side + SIDE_ROW;
    for (int i = 0; i < poses; i++) {
      if (poseRowTo(out, side, input[0], input[1], input[2], input[3], input[4]) != Ok) return false;
      out += POSE_ROW;
      input += INPUT_ROW;
    }
    side = input;
  }
  return true;
}

int main(int argc, char **argv) {
  if (argc != 3) return std::fprintf(stderr, "usage: pose FILE ROUNDS\n"), 2;
  const std::vector<double> given = numbersIn(argv[1]);
  const int rounds = std::atoi(argv[2]);
  if (given.size() < 2) return std::fprintf(stderr, "pose: nothing to read in %s\n", argv[1]), 2;
  const int sides = static_cast<int>(given[0]);
  const int poses = static_cast<int>(given[1]);
  if (given.size() != 2 + static_cast<size_t>(sides) * (SIDE_ROW + INPUT_ROW * static_cast<size_t>(poses)))
    return std::fprintf(stderr, "pose: %s has %zu numbers\n", argv[1], given.size()), 2;

  std::vector<double> rows(static_cast<size_t>(sides) * poses * POSE_ROW);
  bool isOk = solveAll(rows, given, sides, poses);
  const std::clock_t start = std::clock();
  for (int i = 0; i < rounds; i++) isOk = solveAll(rows, given, sides, poses) && isOk;
  const std::clock_t end = std::clock();
  if (!isOk) return std::fprintf(stderr, "pose: a pose is out of reach\n"), 1;

  double sum = 0;
  for (const double number : rows) sum += number;
  std::printf("%.0f %.17g\n", 1e9 * (end - start) / CLOCKS_PER_SEC, sum);
  return 0;
}
