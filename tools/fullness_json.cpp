#include "fullness_json.hpp"

namespace dartwright::tools {

Json json_of_fullness(const Piece& piece, const std::vector<Run>& runs, const std::string& edge) {
    Json stretches = Json::array();
    for (const FullStretch& each : full_stretches(piece, runs)) {
        if (each.edge != edge) continue;
        stretches.push_back({{"from", each.from_mm},
                             {"to", each.to_mm},
                             {"flat", each.flat_mm()},
                             {"gathered", each.is_gathered()}});
    }
    return stretches;
}

}  // namespace dartwright::tools
