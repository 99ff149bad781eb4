"""Whisper's forward pass over CTranslate2's own weights, with a thin change beside every linear layer.

Radford et al. 2022, section 2.2; low-rank adaptation after Hu et al. 2021, section 4.1.
"""

from __future__ import annotations

from math import sqrt
from pathlib import Path
from typing import Any

import torch
from torch.nn import functional

from capture.adapter import weights_of

LAYERS, HEADS = 6, 8


class Taught(torch.nn.Module):  # type: ignore[misc]
    """The published model, and what is learnt about it: per linear weight `down` (rank, in) and `up` (out, rank)."""

    def __init__(self, model: Path, rank: int, device: str) -> None:
        super().__init__()
        self.fixed: dict[str, Any] = {
            name: torch.from_numpy(values.copy()).float().to(device) for name, values in weights_of(model)
        }
        self.down, self.up = torch.nn.ParameterDict(), torch.nn.ParameterDict()
        for name, weight in self.fixed.items():
            if "/linear_" in name and name.endswith("/weight"):
                down = torch.randn(rank, weight.shape[1], device=device) / sqrt(weight.shape[1])
                self.down[_key(name)] = torch.nn.Parameter(down)
                self.up[_key(name)] = torch.nn.Parameter(torch.zeros(weight.shape[0], rank, device=device))

    def learnt(self) -> dict[str, Any]:
        """As `capture.adapter` reads it."""
        names = [name for name in self.fixed if _key(name) in self.down]
        kept = {f"{name}/down": self.down[_key(name)] for name in names}
        kept |= {f"{name}/up": self.up[_key(name)] for name in names}
        return {name: values.detach().half().cpu().numpy() for name, values in sorted(kept.items())}

    def encode(self, mel: Any) -> Any:
        """Of log-mel frames (batch, 80, frames) what the decoder attends to (batch, frames / 2, 512)."""
        hidden = functional.gelu(self._convolved(mel, "encoder/conv1", 1))
        hidden = functional.gelu(self._convolved(hidden, "encoder/conv2", 2)).transpose(1, 2)
        hidden = hidden + self.fixed["encoder/position_encodings/encodings"][: hidden.shape[1]].to(hidden.dtype)
        for number in range(LAYERS):
            hidden = self._own_attention(hidden, f"encoder/layer_{number}", causal=False)
            hidden = self._forward(hidden, f"encoder/layer_{number}")
        return self._normed(hidden, "encoder/layer_norm")

    def decode(self, tokens: Any, encoded: Any) -> Any:
        """The hidden state behind each token (batch, length, 512)."""
        hidden = functional.embedding(tokens, self.fixed["decoder/embeddings/weight"])
        hidden = (hidden + self.fixed["decoder/position_encodings/encodings"][: tokens.shape[1]]).to(encoded.dtype)
        for number in range(LAYERS):
            layer = f"decoder/layer_{number}"
            hidden = self._own_attention(hidden, layer, causal=True)
            asked = self._linear(self._normed(hidden, f"{layer}/attention/layer_norm"), f"{layer}/attention/linear_0")
            keys, values = self._linear(encoded, f"{layer}/attention/linear_1").chunk(2, -1)
            hidden = hidden + self._linear(_attended(asked, keys, values, False), f"{layer}/attention/linear_2")
            hidden = self._forward(hidden, layer)
        return self._normed(hidden, "decoder/layer_norm")

    def logits(self, hidden: Any) -> Any:
        """Of each next token."""
        return functional.linear(hidden, self.fixed["decoder/embeddings/weight"].to(hidden.dtype)).float()

    def _own_attention(self, hidden: Any, layer: str, *, causal: bool) -> Any:
        normed = self._normed(hidden, f"{layer}/self_attention/layer_norm")
        asked, keys, values = self._linear(normed, f"{layer}/self_attention/linear_0").chunk(3, -1)
        return hidden + self._linear(_attended(asked, keys, values, causal), f"{layer}/self_attention/linear_1")

    def _forward(self, hidden: Any, layer: str) -> Any:
        inner = functional.gelu(self._linear(self._normed(hidden, f"{layer}/ffn/layer_norm"), f"{layer}/ffn/linear_0"))
        return hidden + self._linear(inner, f"{layer}/ffn/linear_1")

    def _linear(self, hidden: Any, name: str) -> Any:
        weight, bias = self.fixed[f"{name}/weight"], self.fixed[f"{name}/bias"]
        key = _key(f"{name}/weight")
        thin = functional.linear(hidden, self.down[key].to(hidden.dtype))
        plain = functional.linear(hidden, weight.to(hidden.dtype), bias.to(hidden.dtype))
        return plain + functional.linear(thin, self.up[key].to(hidden.dtype))

    def _normed(self, hidden: Any, name: str) -> Any:
        gamma, beta = self.fixed[f"{name}/gamma"], self.fixed[f"{name}/beta"]
        return functional.layer_norm(hidden.float(), (hidden.shape[-1],), gamma, beta).to(hidden.dtype)

    def _convolved(self, hidden: Any, name: str, stride: int) -> Any:
        weight, bias = (self.fixed[f"{name}/{one}"].to(hidden.dtype) for one in ("weight", "bias"))
        return functional.conv1d(hidden, weight, bias, stride=stride, padding=1)


def _key(name: str) -> str:
    return name.replace("/", "~")


def _attended(asked: Any, keys: Any, values: Any, causal: bool) -> Any:
    asked, keys, values = (one.unflatten(-1, (HEADS, -1)).transpose(1, 2) for one in (asked, keys, values))
    return functional.scaled_dot_product_attention(asked, keys, values, is_causal=causal).transpose(1, 2).flatten(2)
