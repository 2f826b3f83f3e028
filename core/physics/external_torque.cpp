#include "core/physics/external_torque.h"

#include <algorithm>

namespace jw {

tl::expected<PointTable, InputError> externalTable(const Load& load) {
  static const PointColumn kTorque{"torque", Quantity::Torque, "N*m", -1e9, 1e9};
  static const PointTableKind kOverTime{
      {"time", Quantity::Time, "s"}, kTorque, "0.2 s 5 N*m; 1 s 12 N*m"};
  static const PointTableKind kOverAngle{
      {"angle", Quantity::Angle, "deg"}, kTorque, "0 deg 5 N*m; 90 deg 12 N*m"};
  if (load.externalOver == ExternalOver::None) return PointTable{};
  return readPointTable(load.externalTable,
                        load.externalOver == ExternalOver::Time ? kOverTime : kOverAngle);
}

void addExternal(const PointTable& table, ExternalOver over, const SampledCycle& cycle,
                 Eigen::ArrayXd& torque) {
  if (table.empty()) return;
  const Eigen::ArrayXd& at = over == ExternalOver::Time ? cycle.time : cycle.angle;
  for (Eigen::Index i = 0; i < torque.size(); ++i) torque[i] += table.valueAt(at[i]);
}

void addTableTorques(const Cycle& source, const SampledCycle& cycle, Eigen::ArrayXd& torque) {
  const auto brings = [](const Segment& segment) {
    return segment.law == MotionLaw::Table && !segment.table.torque.empty();
  };
  if (std::none_of(source.segments.begin(), source.segments.end(), brings)) return;
  for (Eigen::Index i = 0; i < cycle.size();) {
    const Segment& segment = source.segments[static_cast<std::size_t>(cycle.segment[i])];
    const auto rows = static_cast<Eigen::Index>(segment.table.torque.size());
    if (brings(segment)) {
      torque.segment(i, rows) +=
          Eigen::Map<const Eigen::ArrayXd>(segment.table.torque.data(), rows);
    }
    i += brings(segment) ? rows : 1;
  }
}

}  // namespace jw
