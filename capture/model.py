"""The speech model, loaded and ready to hear."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from capture import model_files, taught_model
from capture.errors import ModelError
from capture.fingerprint import fingerprint
from capture.options import HearingOptions


@dataclass(frozen=True, slots=True)
class SpeechModel:
    """A loaded speech model."""

    name: str
    """"whisper-base, taught measures" for the one that ships, else the folder or name that was asked for."""
    device: str
    compute_type: str
    fingerprint: str
    """Tells two models of one name apart."""
    whisper: Any
    """The `faster_whisper.WhisperModel`."""

    def count_tokens(self, text: str) -> int:
        """How many of the model's tokens `text` takes as a prompt."""
        return len(self.whisper.hf_tokenizer.encode(" " + text.strip(), add_special_tokens=False).ids)


def load_model(options: HearingOptions | None = None) -> SpeechModel:
    """Load the model that `options` names.

    Raises `ModelError` where it can't be found, fetched or loaded. The model that ships never touches the network.
    """
    options = options or HearingOptions()
    name = options.model or taught_model.NAME
    folder = _folder(options.model) if options.model else taught_model.taught_model()
    device, compute_type = _device(options.device)
    try:
        whisper = _load(folder, device, compute_type)
    except (RuntimeError, ValueError, OSError) as error:
        if options.device != "auto" or device == "cpu":
            raise _not_loaded(name, error) from error
        # A GPU that is there but can't be used (libraries lacking): the CPU hears slower, not worse.
        device, compute_type = _device("cpu")
        try:
            whisper = _load(folder, device, compute_type)
        except (RuntimeError, ValueError, OSError) as second:
            raise _not_loaded(name, second) from second
    if device != "cpu":
        compute_type = str(whisper.model.compute_type)
    return SpeechModel(name, device, compute_type, _told_apart(folder), whisper)


def _told_apart(folder: Path) -> str:
    """Sum of a model; what was taught changes only the middle of its file, so its folder's name counts too."""
    return f"{fingerprint(folder / 'model.bin')} {folder.name}"


def _folder(model: str) -> Path:
    if model == model_files.NAME:
        return model_files.shipped_model()
    place = Path(model).expanduser()
    if place.is_dir():
        if not (place / "model.bin").is_file():
            raise ModelError(
                model, "the folder holds no model.bin", "name a folder with a Whisper model in CTranslate2's format"
            )
        return place
    if place.is_absolute() or model.startswith((".", "~")) or len(place.parts) > 2:
        raise ModelError(model, "there is no such folder", "check the path, or leave --model out")
    from faster_whisper import download_model

    try:
        return Path(download_model(model))
    except ValueError as error:
        raise ModelError(
            model, "faster-whisper knows no model of that name", "name a model folder, or leave --model out"
        ) from error
    except OSError as error:
        raise ModelError(
            model,
            "it isn't on this machine and can't be fetched",
            "connect to the internet and try again, name a model folder, or leave --model out",
        ) from error


def _load(folder: Path, device: str, compute_type: str) -> Any:
    import numpy as np
    from faster_whisper import WhisperModel

    whisper = WhisperModel(str(folder), device=device, compute_type=compute_type, cpu_threads=os.cpu_count() or 1)
    if device != "cpu":
        # CUDA's libraries are only looked for on first use; better now than an hour into a recording.
        whisper.encode(np.zeros((whisper.model.n_mels, 3000), dtype=np.float32))
    return whisper


def _device(wanted: str) -> tuple[str, str]:
    import ctranslate2

    if wanted == "auto":
        wanted = "cuda" if ctranslate2.get_cuda_device_count() else "cpu"
    return wanted, "int8" if wanted == "cpu" else "auto"


def _not_loaded(name: str, error: Exception) -> ModelError:
    reason = str(error).strip().splitlines()[0] if str(error).strip() else type(error).__name__
    return ModelError(name, f"it can't be loaded ({reason})", "name another model folder, or leave --model out")
