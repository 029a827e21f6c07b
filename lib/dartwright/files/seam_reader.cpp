#include "dartwright/files/seam_reader.hpp"

#include <algorithm>

#include "dartwright/pattern/outline_direction.hpp"
#include "dartwright/words/lists.hpp"
#include "dartwright/words/quoted.hpp"

namespace dartwright {
namespace {

const PieceRead* find_piece(const PiecesRead& pieces, const std::string& name) {
    const auto found = std::find_if(pieces.pieces.begin(), pieces.pieces.end(),
                                    [&](const PieceRead& read) { return read.piece.name == name; });
    return found == pieces.pieces.end() ? nullptr : &*found;
}

std::vector<std::string> names_of(const PiecesRead& pieces) {
    std::vector<std::string> names;
    for (const PieceRead& read : pieces.pieces) names.push_back(read.piece.name);
    return names;
}

SeamPart read_part(Reading& reading, const JsonNode& node, const PiecesRead& pieces) {
    const Fields fields(reading, node, "a side of a seam", {"piece", "edge", "from", "mirrored"});
    SeamPart part;
    if (const JsonNode* piece = fields.required("piece", "the piece's name")) {
        const auto name = pieces.is_every_name_read
                              ? read_known_name(reading, *piece, "piece", names_of(pieces))
                              : read_name(reading, *piece);
        part.piece = name.value_or("");
    }
    const PieceRead* of = part.piece.empty() ? nullptr : find_piece(pieces, part.piece);
    const bool has_runs = of && of->runs.is_sound;
    if (const JsonNode* edge = fields.required("edge", "the edge's name")) {
        const auto name =
            has_runs ? read_known_name(reading, *edge, "edge", of->runs.names) : read_name(reading, *edge);
        part.edge = name.value_or("");
    }
    if (const JsonNode* from = fields.required("from", "the neighbouring edge at the end where it begins")) {
        const auto end = has_runs && !part.edge.empty() ? read_end_of_run(reading, *from, of->runs, part.edge)
                                                        : read_name(reading, *from);
        part.from = end.value_or("");
    }
    if (const JsonNode* mirrored = fields.optional("mirrored"))
        part.mirrored = read_flag(reading, *mirrored).value_or(false);
    return part;
}

LaidAs read_laid(Reading& reading, const JsonNode& node) {
    if (node.kind == JsonNode::Kind::text) {
        if (node.text == "flat") return LaidAs::flat;
        if (node.text == "on each other") return LaidAs::on_each_other;
    }
    reading.reject(node, any_of({"flat", "on each other"}));
    return LaidAs::flat;
}

SeamSide read_side(Reading& reading, const JsonNode& node, const PiecesRead& pieces) {
    if (node.kind != JsonNode::Kind::list) return {read_part(reading, node, pieces)};
    SeamSide side;
    for (const JsonNode* child : node.children) side.push_back(read_part(reading, *child, pieces));
    reading.heed(node, wanted_of_parts(side.size()));
    reading.heed(node, wanted_of_entries(side.size()));
    return side;
}

bool has_piece(const SeamSide& side, const std::string& piece) {
    return std::any_of(side.begin(), side.end(), [&](const SeamPart& part) { return part.piece == piece; });
}

int side_of_piece(Reading& reading, const JsonNode& node, const Seam& seam) {
    std::vector<std::string> names;
    for (const SeamSide& side : seam.joins)
        for (const SeamPart& part : side)
            if (std::find(names.begin(), names.end(), part.piece) == names.end()) names.push_back(part.piece);
    const bool is_complete = !seam.joins[0].empty() && !seam.joins[1].empty() &&
                             !has_piece(seam.joins[0], "") && !has_piece(seam.joins[1], "");
    const auto name = is_complete ? read_known_name(reading, node, "piece", names) : read_name(reading, node);
    if (!name || !is_complete) return 1;
    const bool is_first = has_piece(seam.joins[0], *name);
    if (is_first && has_piece(seam.joins[1], *name))
        reading.add(node, in_quotes(*name) + ", which is on both sides of the seam",
                    "\"side\": 1 or 2 instead of \"piece\"");
    return is_first ? 1 : 2;
}

Ease read_ease(Reading& reading, const JsonNode& node, const Seam& seam) {
    const Fields fields(reading, node, "an ease", {"piece", "side", "amount"});
    Ease ease;
    const JsonNode* piece = fields.optional("piece");
    const JsonNode* side = fields.optional("side");
    if (fields.is_object() && !piece == !side)
        reading.add(node, piece ? "both \"piece\" and \"side\"" : "neither \"piece\" nor \"side\"",
                    "one of them, for the side that is longer");
    if (piece) ease.side = side_of_piece(reading, *piece, seam);
    if (side) {
        ease.side = read_whole(reading, *side, 1, 2).value_or(1);
        ease.by_side = true;
    }
    if (const JsonNode* amount = fields.required("amount", "how much longer the side is"))
        ease.amount = read_length(reading, *amount).value_or(0);
    return ease;
}

/// The ends that a seam may speak of: the edges next to its runs, and the words for ends.
struct SeamEnds {
    std::vector<std::string> names;
    bool is_sound = true;
};

SeamEnds ends_of_seam(const Seam& seam, const PiecesRead& pieces) {
    SeamEnds ends;
    for (const SeamSide& side : seam.joins) {
        ends.is_sound = ends.is_sound && !side.empty();
        for (const SeamPart& part : side) {
            const PieceRead* piece = part.piece.empty() ? nullptr : find_piece(pieces, part.piece);
            if (!piece || !piece->runs.is_sound || part.edge.empty()) {
                ends.is_sound = false;
                continue;
            }
            const auto [before, after] = neighbours_of(piece->runs, part.edge);
            for (const std::string& name : {before, after})
                if (std::find(ends.names.begin(), ends.names.end(), name) == ends.names.end())
                    ends.names.push_back(name);
        }
    }
    return ends;
}

std::map<std::string, CornerIs> read_seam_ends(Reading& reading, const JsonNode& node, const Seam& seam,
                                               const PiecesRead& pieces) {
    const SeamEnds known = ends_of_seam(seam, pieces);
    const std::map<std::string, CornerIs> ends = read_ends(reading, node);
    if (!known.is_sound) return ends;
    for (const JsonNode* child : node.children) {
        const bool is_known =
            std::find(known.names.begin(), known.names.end(), child->key) != known.names.end();
        if (node.kind == JsonNode::Kind::object && !is_known && !is_end_word(std::string(child->key)))
            reading.add(*child, not_next_to_seam(std::string(child->key), known.names));
    }
    return ends;
}

}  // namespace

Seam read_seam(Reading& reading, const JsonNode& node, const PiecesRead& pieces) {
    const Fields fields(reading, node, "a seam",
                        {"name", "joins", "ease", "laid", "allowances_differ", "ends"});
    Seam seam;
    if (const JsonNode* name = fields.required("name", "the seam's name"))
        seam.name = read_name(reading, *name).value_or("");
    if (const JsonNode* joins = fields.required("joins", "the two sides that are sewn together")) {
        if (joins->kind != JsonNode::Kind::list || joins->children.size() != 2) {
            reading.reject(*joins, "a list of two sides");
        } else {
            seam.joins[0] = read_side(reading, *joins->children[0], pieces);
            seam.joins[1] = read_side(reading, *joins->children[1], pieces);
        }
    }
    if (const JsonNode* ease = fields.optional("ease")) seam.ease = read_ease(reading, *ease, seam);
    if (const JsonNode* laid = fields.optional("laid")) seam.laid = read_laid(reading, *laid);
    if (const JsonNode* differ = fields.optional("allowances_differ"))
        seam.allowances_differ = read_flag(reading, *differ).value_or(false);
    if (const JsonNode* ends = fields.optional("ends"))
        seam.ends = read_seam_ends(reading, *ends, seam, pieces);
    return seam;
}

}  // namespace dartwright
