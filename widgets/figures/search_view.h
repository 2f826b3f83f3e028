#pragma once

#include "widgets/figures/line_chart.h"
#include "widgets/figures/search_study.h"

namespace jw {

/// A candidate's place in the picture.
struct SearchDot {
  QPointF at;  ///< in the axes' units
  CheckState state = CheckState::Holds;
  std::size_t candidate = 0;
};

/// What the picture of a search shows: its dots, the Pareto front as a staircase and the design as
/// it stands.
struct SearchView {
  LineChart chart;
  std::vector<SearchDot> dots;  ///< those that fall short first, so that the others cover them
};

/// `withShort`: those that fall short too. Dots without a value on one axis are left out.
SearchView searchView(const SearchStudy& study, bool withShort);

/// State of a candidate by its smallest margin and the project's target.
CheckState stateOf(const DesignPoint& point, const Project& project);

/// "mass, kg".
QString axisTitle(const DesignFigure& figure);

/// A figure's value with its unit, "4.1 kg"; margins with their sign.
QString figureText(const DesignFigure& figure, const DesignPoint& point, const Properties& of);

/// "Drive life, stage 2"; empty if no margin is known.
QString tightestText(const SearchStudy& study, const DesignPoint& point);

/// Name, key numbers, tightest check or why it falls short, as HTML.
QString candidateTip(const SearchStudy& study, const Candidate& candidate);

/// The same on one line.
QString candidateLine(const SearchStudy& study, const Candidate& candidate);

/// "47 872 screened · 226 survive · 4 hold".
QString countsText(const SearchStudy& study);

/// By which checks combinations were rejected, most first, as lines.
QString reasonsText(const SearchStudy& study);

}  // namespace jw
