#pragma once

#include <QFile>
#include <QtTest>

#include "core/files/project_text.h"
#include "tests/gui/heat_support.h"
#include "widgets/figures/search_figure.h"

namespace jw::test {

constexpr int kSearchPatience = 60'000;  // [ms]

/// The invented welding turntable, for which many of the bundled parts will do.
inline Project searchedJoint() {
  QFile file(QStringLiteral(JW_SAMPLES_DIR "/3-welding-tilt.jointwright"));
  EXPECT_TRUE(file.open(QIODevice::ReadOnly));
  const auto read = readProject(file.readAll().toStdString(), "welding");
  EXPECT_TRUE(read.has_value());
  return read->project;
}

/// A figure that has searched the bundled catalogues.
inline void searchAndWait(SearchFigure& figure) {
  figure.search();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !figure.isSearching(); }, kSearchPatience));
  ASSERT_TRUE(figure.study() != nullptr && figure.study()->done);
}

}  // namespace jw::test
