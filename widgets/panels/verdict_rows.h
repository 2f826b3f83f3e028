#pragma once

#include <vector>

#include <QString>

#include "widgets/snapshot.h"

namespace jw {

/// One verdict in words.
struct VerdictRow {
  QString id;
  int stage = -1;
  QString title;
  CheckState state = CheckState::Open;
  double margin = 0;
  QString amounts;        ///< "4 830 of 7 000 h"; of an open one what it needs
  QString marginText;     ///< "−31 %"
  QString missingField;   ///< path of the first field that is missing
  QString sentence;       ///< for screen readers
  bool accepted = false;  ///< short or close, and someone has accepted it as it stands
  QString acceptance;     ///< "accepted" or "reopened"; empty if nobody has accepted it
  QString depends;        ///< "ratio +2 · payload −1.1": strongest inputs; empty until known
  int dependsLines = 0;   ///< how many they are, or room for them while they are not known
};

/// The verdicts, worst first: short, close, open, holds; of one state by margin, the smallest
/// first.
std::vector<VerdictRow> verdictRows(const Snapshot& snapshot);

/// "2 short · 3 close · 1 open · 17 hold"; states that no check is in are left out.
QString verdictCounts(const std::vector<VerdictRow>& rows);

}  // namespace jw
