#pragma once

#include <initializer_list>
#include <memory>
#include <utility>
#include <vector>

namespace jw {

/// A column of numbers that its copies share, so that a project with a long motion table can be
/// copied for every step of undo. Reading never copies; own() parts it from its copies.
class SharedColumn {
 public:
  using value_type = double;
  using const_iterator = std::vector<double>::const_iterator;
  using iterator = const_iterator;

  SharedColumn() = default;
  SharedColumn(std::vector<double> values)  // NOLINT(google-explicit-constructor)
      : values_(values.empty() ? nullptr
                               : std::make_shared<std::vector<double>>(std::move(values))) {}
  SharedColumn(std::initializer_list<double> values) : SharedColumn(std::vector<double>(values)) {}

  const std::vector<double>& values() const { return values_ ? *values_ : none(); }
  operator const std::vector<double>&() const {  // NOLINT(google-explicit-constructor)
    return values();
  }
  std::size_t size() const { return values().size(); }
  bool empty() const { return values().empty(); }
  const double& operator[](std::size_t i) const { return values()[i]; }
  const double& front() const { return values().front(); }
  const double& back() const { return values().back(); }
  const double* data() const { return values().data(); }
  const_iterator begin() const { return values().begin(); }
  const_iterator end() const { return values().end(); }

  /// The numbers to be changed; parts this column from its copies.
  std::vector<double>& own() {
    if (!values_ || values_.use_count() > 1)
      values_ = std::make_shared<std::vector<double>>(values());
    return *values_;
  }
  void push_back(double value) { own().push_back(value); }

  /// Copies that share are equal without a look at the numbers.
  friend bool operator==(const SharedColumn& a, const SharedColumn& b) {
    return a.values_ == b.values_ || a.values() == b.values();
  }

 private:
  static const std::vector<double>& none() {
    static const std::vector<double> kNone;
    return kNone;
  }
  std::shared_ptr<std::vector<double>> values_;
};

}  // namespace jw
