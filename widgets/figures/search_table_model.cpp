#include "widgets/figures/search_table_model.h"

#include <algorithm>
#include <cmath>

#include "widgets/figures/search_view.h"
#include "widgets/inputs/field_text.h"
#include "widgets/theme/marks.h"
#include "widgets/theme/number_text.h"
#include "widgets/theme/theme.h"

namespace jw {
namespace {

constexpr const char* kShownFigures[] = {"margin",
                                         "open",
                                         "mass",
                                         "length",
                                         "diameter",
                                         "loss",
                                         "motor.temperature_winding_peak",
                                         "supply.energy_per_cycle"};

/// Short titles where the figure's own is long.
QString shortLabel(const DesignFigure& figure) {
  if (figure.name == "margin") return SearchTableModel::tr("Margin");
  if (figure.name == "open") return SearchTableModel::tr("Open");
  if (figure.name == "motor.temperature_winding_peak") return SearchTableModel::tr("Winding");
  if (figure.name == "supply.energy_per_cycle") return SearchTableModel::tr("Energy/cycle");
  if (figure.name == "loss") return SearchTableModel::tr("Loss");
  return upperFirst(QString::fromStdString(figureLabel(figure)));
}

}  // namespace

SearchTableModel::SearchTableModel(QObject* parent) : QAbstractTableModel(parent) {
  for (const char* name : kShownFigures) m_figures.push_back(*findFigure(name));
}

void SearchTableModel::showStudy(const SearchStudy* study, bool withShort) {
  beginResetModel();
  m_study = study;
  m_withShort = withShort;
  m_rows.clear();
  for (std::size_t k = 0; study && k < study->candidates.size(); ++k) {
    if (withShort || study->candidates[k].point.noneShort()) m_rows.push_back(k);
  }
  arrange();
  endResetModel();
}

std::optional<std::size_t> SearchTableModel::candidateOf(int row) const {
  if (row < 0 || row >= int(m_rows.size())) return std::nullopt;
  return m_rows[std::size_t(row)];
}

int SearchTableModel::rowOf(std::size_t candidate) const {
  const auto found = std::find(m_rows.begin(), m_rows.end(), candidate);
  return found == m_rows.end() ? -1 : int(found - m_rows.begin());
}

int SearchTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : int(m_rows.size());
}

int SearchTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : kFixed + int(m_figures.size());
}

QString SearchTableModel::fixedText(const Candidate& one, int column) const {
  const SearchSpace& space = *m_study->question.space;
  switch (column) {
    case Motor: return QString::fromStdString(space.motors[one.which.motor].name);
    case Reducer: return QString::fromStdString(space.reducers[one.which.reducer].name);
    case Belt:
      return space.beltStage < 0 ? QString() : numberText(space.beltRatios[one.which.ratio]);
    default: break;
  }
  return tightestText(*m_study, one.point);
}

QString SearchTableModel::textOf(const Candidate& one, int column) const {
  if (column < kFixed) return fixedText(one, column);
  const DesignFigure& figure = m_figures[std::size_t(column - kFixed)];
  const double value = figure.of(one.point, one.properties);
  if (figure.name == "margin") {
    return stateCharacter(stateOf(one.point, *m_study->question.project)) + u' ' +
           marginText(value);
  }
  return std::isnan(value) ? QStringLiteral("–")
                           : numberText(fromInternal(value, figure.unit, figure.quantity));
}

QVariant SearchTableModel::inkOfCell(const Candidate& one, int column) const {
  if (column != kFixed) return {};
  const Palette& p = jw::palette();
  return inkOf(stateColour(stateOf(one.point, *m_study->question.project), p), p.panel);
}

QVariant SearchTableModel::data(const QModelIndex& index, int role) const {
  const auto at = candidateOf(index.row());
  if (!index.isValid() || !at) return {};
  const Candidate& one = m_study->candidates[*at];
  switch (role) {
    case Qt::DisplayRole: return textOf(one, index.column());
    case Qt::ToolTipRole: return candidateTip(*m_study, one);
    case Qt::ForegroundRole: return inkOfCell(one, index.column());
    case Qt::TextAlignmentRole: {
      const bool words = index.column() < kFixed && index.column() != Belt;
      return int((words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
    default: return {};
  }
}

QVariant SearchTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Vertical || section >= columnCount()) return {};
  if (role == Qt::ToolTipRole && section >= kFixed)
    return upperFirst(
        QString::fromStdString(figureLabel(m_figures[std::size_t(section - kFixed)])));
  const bool words = section < kFixed && section != Belt;
  if (role == Qt::TextAlignmentRole)
    return int((words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
  if (role != Qt::DisplayRole) return {};
  switch (section) {
    case Motor: return tr("Motor");
    case Reducer: return tr("Reducer");
    case Belt: return tr("Belt");
    case Tightest: return tr("Tightest check");
    default: break;
  }
  const DesignFigure& figure = m_figures[std::size_t(section - kFixed)];
  const QString unit = QString::fromStdString(prettyUnit(figure.unit));
  const QString label = shortLabel(figure);
  const QString title =
      figure.name == "margin" || unit.isEmpty() ? label : label + QStringLiteral(", ") + unit;
  return section == m_column ? title + QChar(0x2003) : title;  // room for the arrow
}

void SearchTableModel::sort(int column, Qt::SortOrder order) {
  m_column = column;
  m_order = order;
  emit layoutAboutToBeChanged();
  const QModelIndexList old = persistentIndexList();
  std::vector<std::optional<std::size_t>> kept;
  for (const QModelIndex& index : old) kept.push_back(candidateOf(index.row()));
  arrange();
  for (int k = 0; k < old.size(); ++k) {
    const auto& one = kept[std::size_t(k)];
    changePersistentIndex(old[k], one ? index(rowOf(*one), old[k].column()) : QModelIndex());
  }
  emit layoutChanged();
}

/// By the chosen column; what is not known comes last, equals stay in the order of the catalogue.
void SearchTableModel::arrange() {
  if (!m_study) return;
  const auto& all = m_study->candidates;
  const bool falling = m_order == Qt::DescendingOrder;
  const auto number = [&](std::size_t k) {
    const Combination& which = all[k].which;
    if (m_column == Belt) {
      const SearchSpace& space = *m_study->question.space;
      return space.beltStage < 0 ? 0.0 : space.beltRatios[which.ratio];
    }
    return m_figures[std::size_t(m_column - kFixed)].of(all[k].point, all[k].properties);
  };
  const auto place = [&](std::size_t k) {
    return std::tie(all[k].which.motor, all[k].which.reducer, all[k].which.ratio);
  };
  if (m_column < kFixed && m_column != Belt) {
    std::vector<QString> texts(all.size());
    for (const std::size_t k : m_rows) texts[k] = fixedText(all[k], m_column);
    std::sort(m_rows.begin(), m_rows.end(), [&](std::size_t a, std::size_t b) {
      if (texts[a] != texts[b]) return falling ? texts[a] > texts[b] : texts[a] < texts[b];
      return place(a) < place(b);
    });
    return;
  }
  const bool byMargin = m_column == kFixed;  // of little worth where other verdicts are open
  std::sort(m_rows.begin(), m_rows.end(), [&](std::size_t a, std::size_t b) {
    const int openA = all[a].point.opened, openB = all[b].point.opened;
    if (byMargin && openA != openB) return openA < openB;
    const double x = number(a);
    const double y = number(b);
    if (std::isnan(x) || std::isnan(y)) {
      return std::isnan(x) == std::isnan(y) ? place(a) < place(b) : std::isnan(y);
    }
    if (x != y) return falling ? x > y : x < y;
    return place(a) < place(b);
  });
}

}  // namespace jw
