#pragma once

#include <map>
#include <set>
#include <string>

namespace jw {

/// The entry of a catalogue that a struct's figures were taken over from.
struct CataloguePart {
  std::string part;               ///< name of the entry; empty: taken from none
  std::string catalogue;          ///< where the entry stood
  std::set<std::string> changed;  ///< keys of fields that were given a value of their own since
  bool operator==(const CataloguePart&) const = default;

  /// Whether the value of the field `key` is the entry's.
  bool gives(const std::string& key) const { return !part.empty() && !changed.contains(key); }
  /// The field `key` was given a value by hand.
  void change(const std::string& key) {
    if (!part.empty()) changed.insert(key);
  }
};

/// What a file or a person wrote about one struct besides its values: the text of each number as
/// typed ("20 lbf*ft"), how far a number may be off, and keys that this version does not know (kept
/// as JSON text so that saving loses nothing). Evaluation never reads it.
struct AsWritten {
  std::map<std::string, std::string> typed;    ///< field key -> text as typed
  std::map<std::string, std::string> bands;    ///< field key -> tolerance band, "± 5 %" (band.h)
  std::map<std::string, std::string> unknown;  ///< unknown key -> JSON text
  CataloguePart from;                          ///< entry of a catalogue behind the values
  bool operator==(const AsWritten&) const = default;
};

}  // namespace jw
