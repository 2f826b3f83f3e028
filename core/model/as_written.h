#pragma once

#include <map>
#include <string>

namespace jw {

/// What a file or a person wrote about one struct besides its values: the text of each number as
/// typed ("20 lbf*ft"), how far a number may be off, and keys that this version does not know (kept
/// as JSON text so that saving loses nothing). Evaluation never reads it.
struct AsWritten {
  std::map<std::string, std::string> typed;    ///< field key -> text as typed
  std::map<std::string, std::string> bands;    ///< field key -> tolerance band, "± 5 %" (band.h)
  std::map<std::string, std::string> unknown;  ///< unknown key -> JSON text
  bool operator==(const AsWritten&) const = default;
};

}  // namespace jw
