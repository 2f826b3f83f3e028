#include "core/motion/smooth_piece.h"

#include <algorithm>
#include <cmath>

namespace jw {
namespace {

constexpr Eigen::Index kBlock = 64;
using Block = Eigen::Array<double, Eigen::Dynamic, 1, Eigen::ColMajor, kBlock, 1>;
using Coefficients = std::array<double, 8>;

Coefficients derivative(const Coefficients& c) {
  Coefficients d{};
  for (std::size_t k = 1; k < c.size(); ++k) d[k - 1] = static_cast<double>(k) * c[k];
  return d;
}

template <typename X>
auto polynomial(const Coefficients& c, const X& x) {
  return c[0] +
         x * (c[1] + x * (c[2] + x * (c[3] + x * (c[4] + x * (c[5] + x * (c[6] + x * c[7]))))));
}

template <typename X>
auto cubic(const Coefficients& c, const X& x) {
  return c[0] + x * (c[1] + x * (c[2] + x * c[3]));
}

bool isCubic(const Coefficients& c) {
  return std::all_of(c.begin() + 4, c.end(), [](double value) { return value == 0; });
}

/// Sine and cosine of n equally spaced angles, n <= kBlock.
struct SineTable {
  Block sine, cosine;
  SineTable(double step, Eigen::Index n) : sine(n), cosine(n) {
    for (Eigen::Index k = 0; k < n; ++k) {
      sine[k] = std::sin(step * static_cast<double>(k));
      cosine[k] = std::cos(step * static_cast<double>(k));
    }
  }
};

/// Samples of the polynomial part, a block at a time so that everything stays in the first cache.
class PolynomialSampler {
 public:
  explicit PolynomialSampler(const Coefficients& c)
      : position_(c),
        speed_(derivative(c)),
        acceleration_(derivative(speed_)),
        cubic_(isCubic(c)) {}

  void fill(const Block& x, Eigen::Index first, SampleColumns& out) const {
    const Eigen::Index n = x.size();
    if (cubic_) {
      out.position.segment(first, n) = cubic(position_, x);
      out.speed.segment(first, n) = speed_[0] + x * (speed_[1] + x * speed_[2]);
      out.acceleration.segment(first, n) = acceleration_[0] + x * acceleration_[1];
    } else {
      out.position.segment(first, n) = polynomial(position_, x);
      out.speed.segment(first, n) = polynomial(speed_, x);
      out.acceleration.segment(first, n) = polynomial(acceleration_, x);
    }
  }

 private:
  Coefficients position_, speed_, acceleration_;
  bool cubic_;
};

/// Adds the sine part to samples [first, first + n). sin(a + b) from a table of b costs four
/// products a sample instead of two library calls.
void addSineBlock(const SmoothPiece& piece, const SineTable& table, double x0, Eigen::Index first,
                  Eigen::Index n, SampleColumns& out) {
  const double angle = piece.frequency * x0 + piece.phase;
  const double sine = std::sin(angle);
  const double cosine = std::cos(angle);
  const Block s = sine * table.cosine.head(n) + cosine * table.sine.head(n);
  const Block c = cosine * table.cosine.head(n) - sine * table.sine.head(n);
  const double speed = piece.amplitude * piece.frequency;
  out.position.segment(first, n) += piece.amplitude * s;
  out.speed.segment(first, n) += speed * c;
  out.acceleration.segment(first, n) -= speed * piece.frequency * s;
}

}  // namespace

MotionState stateAt(const SmoothPiece& piece, double u) {
  const double x = u - piece.begin;
  const Coefficients speed = derivative(piece.coefficients);
  const Coefficients acceleration = derivative(speed);
  const double w = piece.frequency;
  const double sine = piece.amplitude * std::sin(w * x + piece.phase);
  const double cosine = piece.amplitude * std::cos(w * x + piece.phase);
  return {polynomial(piece.coefficients, x) + sine, polynomial(speed, x) + w * cosine,
          polynomial(acceleration, x) - w * w * sine,
          polynomial(derivative(acceleration), x) - w * w * w * cosine};
}

void samplePiece(const SmoothPiece& piece, SampleColumns columns) {
  const Eigen::Index count = columns.position.size();
  const double step = (piece.end - piece.begin) / static_cast<double>(count - 1);
  const Eigen::Index block = std::min(kBlock, count);
  const Block offsets = Eigen::ArrayXd::LinSpaced(block, 0, static_cast<double>(block - 1));
  const bool hasSine = piece.amplitude != 0;
  const SineTable table(piece.frequency * step, hasSine ? block : 0);
  const PolynomialSampler sampler(piece.coefficients);
  for (Eigen::Index first = 0; first < count; first += block) {
    const Eigen::Index n = std::min(block, count - first);
    const Block x = (offsets.head(n) + static_cast<double>(first)) * step;
    sampler.fill(x, first, columns);
    if (hasSine) addSineBlock(piece, table, x[0], first, n, columns);
  }
}

void AccelerationChain::append(SmoothPiece piece) {
  end_ = stateAt(piece, piece.end);
  pieces_.push_back(piece);
}

void AccelerationChain::addLinear(double length, double from, double to) {
  if (!(length > 0)) return;
  SmoothPiece piece;
  piece.begin = pieces_.empty() ? 0 : pieces_.back().end;
  piece.end = piece.begin + length;
  piece.coefficients = {end_.position, end_.speed, from / 2, (to - from) / (6 * length)};
  append(piece);
}

void AccelerationChain::addSine(double length, double peak, double phaseFrom, double phaseTo) {
  if (!(length > 0)) return;
  SmoothPiece piece;
  piece.begin = pieces_.empty() ? 0 : pieces_.back().end;
  piece.end = piece.begin + length;
  piece.phase = phaseFrom;
  piece.frequency = (phaseTo - phaseFrom) / length;
  piece.amplitude = -peak / (piece.frequency * piece.frequency);
  piece.coefficients[0] = end_.position - piece.amplitude * std::sin(phaseFrom);
  piece.coefficients[1] = end_.speed - piece.amplitude * piece.frequency * std::cos(phaseFrom);
  append(piece);
}

std::vector<SmoothPiece> AccelerationChain::scaledToUnitTravel() const {
  std::vector<SmoothPiece> scaled = pieces_;
  for (SmoothPiece& piece : scaled) {
    for (double& coefficient : piece.coefficients) coefficient /= end_.position;
    piece.amplitude /= end_.position;
  }
  if (!scaled.empty()) scaled.back().end = 1;  // the lengths add up to 1 but for rounding
  return scaled;
}

}  // namespace jw
