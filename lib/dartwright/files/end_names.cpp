#include "dartwright/files/end_names.hpp"

#include <algorithm>
#include <stdexcept>

#include "dartwright/pattern/pattern_rules.hpp"
#include "dartwright/words/lists.hpp"

namespace dartwright {

Neighbours neighbours_of(const RunNames& runs, const std::string& edge) {
    const auto found = std::find(runs.names.begin(), runs.names.end(), edge);
    if (found == runs.names.end()) throw std::invalid_argument("no run of the name " + edge);
    const auto at = static_cast<std::size_t>(found - runs.names.begin());
    const std::size_t count = runs.names.size();
    return {runs.names[(at + count - 1) % count], runs.names[(at + 1) % count]};
}

bool check_end_of_run(Reading& reading, const JsonNode& node, const std::string& name, const RunNames& runs,
                      const std::string& edge) {
    if (!runs.is_sound) return true;
    if (std::find(runs.names.begin(), runs.names.end(), edge) == runs.names.end()) return true;
    const auto [before, after] = neighbours_of(runs, edge);
    const auto trouble = end_trouble(name, edge, before, after);
    if (trouble) reading.add(node, *trouble);
    return !trouble;
}

std::optional<std::string> read_end_of_run(Reading& reading, const JsonNode& node, const RunNames& runs,
                                           const std::string& edge) {
    auto name = read_name(reading, node);
    if (!name || !check_end_of_run(reading, node, *name, runs, edge)) return std::nullopt;
    return name;
}

std::map<std::string, CornerIs> read_ends(Reading& reading, const JsonNode& node) {
    std::map<std::string, CornerIs> ends;
    if (node.kind != JsonNode::Kind::object) {
        reading.reject(node, "an object of ends, such as {\"neck\": \"free\"}");
        return ends;
    }
    for (const JsonNode* child : node.children) {
        const bool is_text = child->kind == JsonNode::Kind::text;
        if (is_text && child->text == "free")
            ends.emplace(child->key, CornerIs::free);
        else if (is_text && child->text == "smooth")
            ends.emplace(child->key, CornerIs::smooth);
        else
            reading.reject(*child, any_of({"free", "smooth"}));
    }
    return ends;
}

}  // namespace dartwright
